export async function start(..._: unknown[]): Promise<0> {
  return 0
}
