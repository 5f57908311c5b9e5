export async function book(..._: unknown[]): Promise<0> {
  return 0
}
