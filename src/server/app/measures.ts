// What the server counts of itself, as Prometheus text. Names and labels carry nothing of people or jobs.
import { Counter, collectDefaultMetrics, Gauge, Histogram, Registry } from 'prom-client'

export interface Measures {
  readonly text: () => Promise<string>
  readonly contentType: string
  readonly answered: (asked: { method: string; route: string; status: number; seconds: number }) => void
  readonly kept: (entries: number) => void
  readonly refused: (what: 'sign-in' | 'enrolment') => void
  readonly watching: (change: 1 | -1) => void
  readonly worked: (kind: string, end: string, seconds: number) => void
}

export function newMeasures(): Measures {
  const registry = new Registry()
  collectDefaultMetrics({ register: registry })
  const registers = [registry]
  const answers = new Histogram({
    name: 'matchmark_http_seconds',
    help: 'Time to answer, by route and status.',
    labelNames: ['method', 'route', 'status'],
    buckets: [0.005, 0.02, 0.1, 0.5, 2, 10],
    registers,
  })
  const entries = new Counter({ name: 'matchmark_entries_kept', help: 'Entries acknowledged.', registers })
  const doors = new Counter({
    name: 'matchmark_refused',
    help: 'Sign-ins and enrolments refused.',
    labelNames: ['what'],
    registers,
  })
  const watchers = new Gauge({ name: 'matchmark_watching', help: 'Devices that listen for changes.', registers })
  const work = new Histogram({
    name: 'matchmark_work_seconds',
    help: 'Background work, by kind and how it ended.',
    labelNames: ['kind', 'end'],
    buckets: [0.1, 0.5, 2, 10, 60, 300],
    registers,
  })
  return {
    text: () => registry.metrics(),
    contentType: registry.contentType,
    answered: ({ method, route, status, seconds }) => answers.observe({ method, route, status }, seconds),
    kept: (count) => entries.inc(count),
    refused: (what) => doors.inc({ what }),
    watching: (change) => watchers.inc(change),
    worked: (kind, end, seconds) => work.observe({ kind, end }, seconds),
  }
}
