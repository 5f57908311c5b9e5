// Entries of version 1 with the keys that came while it was not released (SPEC.md, J12), as they were written. Never changed, like the others.
import type { Entry } from '../entry.ts'

export const LATER_KEYS: readonly { readonly hash: string; readonly entry: Entry }[] = [
  {
    hash: 'a3f7c6b95fe1e10b035f77d6e6188fdf7d3638bc9c9392602acfe2ab1fad128b',
    entry: {
      id: '6a1d3f01-52bb-4e2f-8c8d-3a7f9ba1d2e1',
      stream: 'J41',
      v: 1,
      person: 'J. Tarn',
      device: 'bench tablet 3',
      seq: 1,
      prev: null,
      at: {
        ms: 1795700000000,
        n: 0,
      },
      kind: 'sequence-adopted',
      body: {
        steps: [
          {
            step: 'joint bolts',
            mode: 'as told',
            start_s: 0,
            end_s: 720,
            people: ['J. Tarn', 'M. Ashdown'],
          },
          {
            step: 'oil',
            people: [],
          },
        ],
      },
    },
  },
  {
    hash: '4946550588c0b5dba251379b241db1f1f78eeec8cc0ea33fc4014fbb5092ab83',
    entry: {
      id: '6a1d3f02-52bb-4e2f-8c8d-3a7f9ba1d2e2',
      stream: 'J41',
      v: 1,
      person: 'J. Tarn',
      device: 'bench tablet 3',
      seq: 2,
      prev: 'a3f7c6b95fe1e10b035f77d6e6188fdf7d3638bc9c9392602acfe2ab1fad128b',
      at: {
        ms: 1795700001000,
        n: 0,
      },
      kind: 'setting-try',
      body: {
        connection: 'input setting',
        check: 'input float',
        with: 'dial gauge 2',
        tried: 'S1 + S3',
        shims: ['S1', 'S3'],
        values: [
          {
            what: 'float of line 1',
            of: 'length',
            low: 0.00004,
            high: 0.00004,
            standing: 'seen',
          },
          {
            what: 'pack',
            of: 'length',
            low: 0.000646,
            high: 0.000646,
            standing: 'seen',
          },
        ],
        result: 'bad',
      },
    },
  },
  {
    hash: 'e164821dc38dde0f32747f01e367f64fed07e1d4f4bf41b3563aa20abb939219',
    entry: {
      id: '6a1d3f03-52bb-4e2f-8c8d-3a7f9ba1d2e3',
      stream: 'J41',
      v: 1,
      person: 'J. Tarn',
      device: 'bench tablet 3',
      seq: 3,
      prev: '4946550588c0b5dba251379b241db1f1f78eeec8cc0ea33fc4014fbb5092ab83',
      at: {
        ms: 1795700002000,
        n: 0,
      },
      kind: 'step-signed',
      body: {
        step: 'joint bolts',
        as: 'done',
        tightened: [
          {
            connection: 'joint bolts',
            stage: 1,
            says: 'all to 25 N·m',
            torque: {
              low: 25,
              high: 25,
              standing: 'told',
            },
            count: 12,
            of: 12,
            with: 'click wrench',
          },
          {
            connection: 'joint bolts',
            stage: 2,
            says: 'all to 45 N·m',
            count: 5,
            of: 12,
            rest: true,
          },
          {
            connection: 'joint bolts',
            stage: 3,
            says: 'all to 65 N·m',
            count: 0,
            of: 12,
          },
        ],
        uncounted: 'counted on paper',
      },
    },
  },
  {
    hash: '663483d4cf29333283afc4872ca66bb9e6d56e27f72983f761ea348d6862a621',
    entry: {
      id: '6a1d3f01-52bb-4e2f-8c8d-3a7f9ba1d2ef',
      stream: 'J41',
      v: 1,
      person: 'J. Tarn',
      device: 'bench tablet 3',
      seq: 4,
      prev: 'e164821dc38dde0f32747f01e367f64fed07e1d4f4bf41b3563aa20abb939219',
      at: {
        ms: 4070908800000,
        n: 1,
        own: 1795700900000,
      },
      kind: 'note',
      body: {
        says: 'The other tablet is in the year 2099.',
      },
    },
  },
  {
    hash: '733da60c56c595bef56087ab98a46e6c11766e3e6fde022d8e44447adede1885',
    entry: {
      id: '6a1d3f05-52bb-4e2f-8c8d-3a7f9ba1d2e5',
      stream: 'J41',
      v: 1,
      person: 'J. Tarn',
      device: 'bench tablet 3',
      seq: 5,
      prev: '663483d4cf29333283afc4872ca66bb9e6d56e27f72983f761ea348d6862a621',
      at: {
        ms: 4070908801000,
        n: 0,
      },
      kind: 'job-opened',
      body: {
        plant: { room: { low: 292.15, high: 292.15, standing: 'told' }, instruments: [], wrenches: [] },
      },
    },
  },
]
