// The addresses of the app and the sheet that each of them shows.
import { Component, lazy, type ReactNode, Suspense } from 'react'
import { Route, Switch } from 'wouter'
import { Action } from './parts/Action.tsx'
import { DeviceSheet } from './sheets/DeviceSheet.tsx'
import { EnrolSheet } from './sheets/EnrolSheet.tsx'
import { Home } from './sheets/Home.tsx'
import { BuildRoute, SequenceRoute } from './sheets/JobSheets.tsx'
import css from './sheets/Plain.module.css'
import { words } from './words/words.ts'

/** Read at the desk: not wanted at the first load. */
const StageRoute = lazy(() => import('./sheets/stages/StageRoute.tsx').then((file) => ({ default: file.StageRoute })))

export function App() {
  return (
    <Stopped>
      <Switch>
        <Route path="/job/:number/sequence">
          {({ number }) => <SequenceRoute number={decodeURIComponent(number)} />}
        </Route>
        <Route path="/job/:number/build/:step?">
          {({ number, step }) => (
            <BuildRoute
              number={decodeURIComponent(number)}
              step={step === undefined ? undefined : decodeURIComponent(step)}
            />
          )}
        </Route>
        <Route path="/job/:number/:stage">
          {({ number, stage }) => (
            <Suspense fallback={null}>
              <StageRoute number={decodeURIComponent(number)} name={stage} />
            </Suspense>
          )}
        </Route>
        <Route path="/device">
          <DeviceSheet />
        </Route>
        <Route path="/enrol">
          <EnrolSheet />
        </Route>
        <Route>
          <Home />
        </Route>
      </Switch>
    </Stopped>
  )
}

/** A fault of ours takes down one sheet, not what was entered. */
class Stopped extends Component<{ readonly children: ReactNode }, { readonly error?: Error }> {
  override state: { readonly error?: Error } = {}

  static getDerivedStateFromError(error: Error) {
    return { error }
  }

  override render() {
    const { error } = this.state
    if (!error) return this.props.children
    return (
      <main className={css.plain}>
        <h1>{words.trouble.title}</h1>
        <p>{words.trouble.says}</p>
        <p className="told">{error.message}</p>
        <Action onDo={() => location.reload()}>{words.trouble.again}</Action>
      </main>
    )
  }
}
