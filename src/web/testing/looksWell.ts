// What can be told by rule of who cannot see, hear or hold well.
import AxeBuilder from 'axe-core'
import type { Page } from 'playwright-core'
import { expect } from 'vitest'

/** Axe finds nothing serious on the sheet as it is. */
export async function looksWell(page: Page): Promise<void> {
  await page.evaluate(AxeBuilder.source)
  const found = await page.evaluate(async () => {
    const { axe } = globalThis as unknown as {
      axe: {
        run(): Promise<{
          violations: { id: string; impact: string; nodes: { html: string; failureSummary: string }[] }[]
        }>
      }
    }
    const { violations } = await axe.run()
    return violations
      .filter(({ impact }) => impact === 'serious' || impact === 'critical')
      .map(
        ({ id, nodes }) =>
          `${id}: ${nodes
            .slice(0, 3)
            .map(({ html, failureSummary }) => `${html.slice(0, 160)} ${failureSummary}`)
            .join(' | ')}`,
      )
  })
  expect(found).toEqual([])
}
