export async function reach(..._: unknown[]): Promise<0> {
  return 0
}
