// What `matchmark shop` can be asked to do.
export const SHOP_ACTIONS = ['list', 'add', 'role', 'pin', 'let-go', 'invite', 'shut-out'] as const
export type ShopAction = (typeof SHOP_ACTIONS)[number]
