export async function why(..._: unknown[]): Promise<0> {
  return 0
}
