/** Values that a problem's sentence may name; already printed for people where a unit matters. */
export type Facts = Readonly<Record<string, string | number>>
