// What tests at the shop's door share: the real shop in a folder, open over https at an address that is not localhost, with the sample job.
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { serveShop } from '../../server/serveShop.ts'
import { builtApp, sampleInto } from './bench.ts'

export class AtDoor {
  readonly folder = mkdtempSync(join(tmpdir(), 'matchmark-door-'))
  app!: Awaited<ReturnType<typeof builtApp>>
  shop!: Awaited<ReturnType<typeof serveShop>>

  async open(): Promise<void> {
    this.app = await builtApp()
    this.shop = await serveShop({
      folder: this.folder,
      port: 0,
      share: { host: '127.0.0.2', port: 0, names: ['127.0.0.2'] },
      webRoot: this.app.dir,
      worker: new URL('../../../dist/worker.js', import.meta.url),
      now: () => Date.now(),
    })
    await sampleInto(this.shop.shop)
  }

  async close(): Promise<void> {
    await this.shop?.close()
    this.app?.remove()
    rmSync(this.folder, { recursive: true, force: true })
  }

  get address(): string {
    return this.shop.share?.addresses.find((one) => one.includes('127.0.0.2')) ?? ''
  }
}
