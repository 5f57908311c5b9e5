// The key with which the shop seals what it gives away: made when it is first wanted, kept in the vault.
import { newSealKey } from '../../journal/archive/sealed.ts'
import type { Vault } from '../../stores/vault/vault.ts'

const SHOP_KEY = 'shop key'

export async function shopKey(vault: Vault): Promise<string> {
  const fresh = newSealKey()
  return (await vault.change(SHOP_KEY, (kept) => kept ?? fresh)) ?? fresh
}
