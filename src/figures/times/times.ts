// How long work takes: told three ways, in a chain, beside each other, and again and again.
import {
  criticalPath,
  firstTime,
  learnedTime,
  type PlacedWork,
  threePointTime,
  timeOfChain,
} from '../../mechanics/index.ts'
import { exact, number, optional, rows, text, told, whole } from '../frame/ask.ts'
import { figure } from '../frame/figure.ts'
import { type Lines, say, sayShare, sayWords } from '../frame/say.ts'

const threeWays = {
  low: told(exact('time'), 'when all goes well'),
  usual: told(exact('time'), 'as most often'),
  high: told(exact('time'), 'when all goes wrong'),
}
const by = optional(told(exact('time'), 'in which it should be done'))
const rate = told(
  number,
  'what each doubling brings the time down to: about 80 % for hand work, 95 % where the machine sets the pace (common practice, no source)',
)

export const TIMES = [
  figure({
    name: 'job-time',
    asks: 'How long does a job take that goes well, as usual, or wrong?',
    of: ['threePointTime'],
    inputs: threeWays,
    work: threePointTime,
    answers: ({ mean, standardDeviation }) => ({
      'on average': say('time', mean),
      'standard deviation': say('time', standardDeviation),
    }),
    words: '(shortest + 4 × usual + longest) ÷ 6; deviation = (longest − shortest) ÷ 6',
    example: 'low=1 h usual=2 h high=5 h',
  }),
  figure({
    name: 'jobs-in-a-row',
    asks: 'How long do several jobs take one after another, and are they done in time?',
    of: ['timeOfChain', 'threePointTime'],
    inputs: { jobs: told(rows({ name: told(text, 'of the job'), ...threeWays }), 'each job'), by },
    work: ({ jobs, by: wished }) =>
      timeOfChain({ times: jobs.map(threePointTime), ...(wished !== undefined && { by: wished }) }),
    answers: ({ mean, standardDeviation, inTime, late }) => ({
      'on average': say('time', mean),
      'standard deviation': say('time', standardDeviation),
      'chance to be done in time': sayShare(inTime),
      'chance to be late': sayShare(late),
    }),
    words: 'means added; deviations squared, added, rooted; the chance by the bell curve',
    example: 'jobs="strip, 3, 5, 9 h; clean, 2, 3, 4 h; fit bushes, 4, 6, 12 h" by=18 h',
  }),
  figure({
    name: 'longest-way',
    asks: 'Which work decides when the whole is done, and what may wait?',
    of: ['criticalPath', 'threePointTime'],
    inputs: {
      works: told(
        rows({
          name: told(text, 'of the work'),
          ...threeWays,
          after: optional(told(text, 'what has to be finished first, several joined by +')),
        }),
        'all work, each going on beside the others as soon as it can',
      ),
      by,
    },
    work: ({ works, by: wished }) =>
      criticalPath({
        works: works.map(({ name, after = '', ...times }) => ({
          name,
          time: threePointTime(times),
          after: after
            .split('+')
            .map((each) => each.trim())
            .filter(Boolean),
        })),
        ...(wished !== undefined && { by: wished }),
      }),
    answers: ({ mean, standardDeviation, inTime, late, critical, works }): Lines => ({
      'on average': say('time', mean),
      'standard deviation': say('time', standardDeviation),
      'chance to be done in time': sayShare(inTime),
      'chance to be late': sayShare(late),
      'longest way': sayWords(critical.join(' → ')),
      ...Object.fromEntries(works.filter(({ name }) => !critical.includes(name)).flatMap(slackLines)),
    }),
    words:
      'forward: each begins when the last of what it waits for ends; backward: each ends before the first that waits for it',
    example:
      'works="strip, 3, 5, 9 h; grind journals, 20, 30, 60 h, strip; clean, 2, 3, 4 h, strip; fit, 4, 6, 12 h, clean+grind journals" by=48 h',
  }),
  figure({
    name: 'batch-time',
    asks: 'How long do the next ones of a batch take, once the hands know the work?',
    of: ['learnedTime'],
    inputs: { first: told(exact('time'), 'time of the very first one'), rate, done: optional(whole), count: whole },
    work: (given) => learnedTime(given),
    answers: ({ total, average }) => ({ 'all of these': say('time', total), 'each of these': say('time', average) }),
    words: 'average of all so far = time of the first × number to the power of log rate ÷ log 2',
    example: 'first=9 h rate=85 % done=1 count=7',
  }),
  figure({
    name: 'first-time',
    asks: 'How long does the very first one take, when a later one is known?',
    of: ['firstTime'],
    inputs: {
      time: told(exact('time'), 'of the later one'),
      number: told(whole, 'which one that was, from 1'),
      rate,
    },
    work: firstTime,
    answers: (first) => ({ 'the first one': say('time', first) }),
    words: 'time of one = time of the first × number to the power of log rate ÷ log 2',
    example: 'time=4 h number=8 rate=85 %',
  }),
]

const slackLines = ({ name, slack, earliestStart }: PlacedWork) => [
  [`${name} may begin after`, say('time', earliestStart)],
  [`${name} may wait`, say('time', slack)],
]
