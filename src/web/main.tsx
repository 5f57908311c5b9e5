// The one place where the app chooses what it stands on: the journal on this device, the shop's server, the worker.
import { StrictMode } from 'react'
import { createRoot } from 'react-dom/client'
import { browserJournal } from '../stores/browser/browserJournal.ts'
import { App } from './App.tsx'
import './look/base.css'
import { followScheme } from './sheets/usePreference.ts'
import { BenchProvider } from './sync/BenchContext.tsx'
import { Bench } from './sync/bench.ts'
import { openDeviceStore } from './sync/deviceStore.ts'
import { Keeper } from './sync/keeper.ts'
import { makeSmall } from './sync/makeSmall.ts'
import { shop } from './sync/shop.ts'
import { words } from './words/words.ts'
import { Workshop } from './work/workshop.ts'

followScheme()
const root = createRoot(document.getElementById('root') ?? document.body)
const keeper = new Keeper()

async function open(): Promise<void> {
  const [journal, store] = await Promise.all([browserJournal(), openDeviceStore('matchmark device')])
  const bench = await Bench.open({ journal, store, shop, makeSmall })
  root.render(
    <StrictMode>
      <BenchProvider bench={bench} workshop={new Workshop()} keeper={keeper}>
        <App />
      </BenchProvider>
    </StrictMode>,
  )
  bench.stayInStep()
  await keeper.keep()
}

open().catch((error: unknown) => {
  root.render(
    <main className="trouble">
      <h1>{words.trouble.title}</h1>
      <p>{error instanceof Error ? error.message : String(error)}</p>
    </main>,
  )
})
