/** What was received, short enough for a sentence. */
export const clip = (text: string): string => (text.length > 40 ? `${text.slice(0, 40)}…` : text)
