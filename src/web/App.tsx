// The addresses of the app and the sheet that each of them shows.
import { Component, lazy, type ReactNode, Suspense, useEffect } from 'react'
import { Route, Switch } from 'wouter'
import { Action } from './parts/Action.tsx'
import { Home } from './sheets/Home.tsx'
import { NoSheet } from './sheets/NoSheet.tsx'
import css from './sheets/Plain.module.css'
import { words } from './words/words.ts'

/** Home stands first and at once; the other sheets come right after it, before a finger can ask for them. */
const jobSheets = () => import('./sheets/JobSheets.tsx')
const deviceSheet = () => import('./sheets/DeviceSheet.tsx')
const SequenceRoute = lazy(async () => ({ default: (await jobSheets()).SequenceRoute }))
const BuildRoute = lazy(async () => ({ default: (await jobSheets()).BuildRoute }))
const DeviceSheet = lazy(async () => ({ default: (await deviceSheet()).DeviceSheet }))
const EnrolSheet = lazy(async () => ({ default: (await import('./sheets/EnrolSheet.tsx')).EnrolSheet }))
/** Read at the desk. */
const StageRoute = lazy(async () => ({ default: (await import('./sheets/stages/StageRoute.tsx')).StageRoute }))

export function App() {
  useEffect(() => {
    // Where they cannot be had now, the sheet that wants them says so.
    void Promise.all([jobSheets(), deviceSheet()]).catch(() => undefined)
  }, [])
  return (
    <Stopped>
      <Suspense fallback={null}>
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
            {({ number, stage }) => <StageRoute number={decodeURIComponent(number)} name={stage} />}
          </Route>
          <Route path="/device">
            <DeviceSheet />
          </Route>
          <Route path="/enrol">
            <EnrolSheet />
          </Route>
          <Route path="/">
            <Home />
          </Route>
          <Route>
            <NoSheet />
          </Route>
        </Switch>
      </Suspense>
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
