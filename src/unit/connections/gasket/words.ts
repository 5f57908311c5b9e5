import type { Kind } from '../kind.ts'
import type { GasketGiven } from './given.ts'

export const words: Pick<Kind<GasketGiven>, 'checks' | 'renewals' | 'cautions' | 'warnings'> = {
  checks: (_connection, given) =>
    given.sealant && given.gasket === undefined
      ? ['A thin even line shows all round; none was squeezed inside.']
      : [`Look through before closing: ${given.holes?.join(', ') ?? 'oil, drain and vent holes'} open.`],
  renewals: (_connection, { gasket }) =>
    gasket === undefined
      ? []
      : [
          {
            part: gasket,
            why: 'A gasket is always renewed; keep the old one to measure and to compare the holes.',
            standing: 'told',
            source: 'army overhaul manuals (gaskets)',
          },
        ],
  cautions: (_connection, given) => [
    'Take an old gasket for asbestos: wet it, do not scrape it dry, no air, no wire wheel; licensed work where the law says so.',
    ...(given.sealant ? [`${given.sealant.what}: read the tube; gloves, air, no flame.`] : []),
  ],
  warnings: (_connection, given) => {
    const part = given['squeezed by']
    const holes = given.holes?.join(' and ')
    return [
      ...(given.sealant && given.gasket === undefined
        ? []
        : [
            holes
              ? `The gasket of ${part} turned or laid upside down closes ${holes}: a bearing runs dry or the housing blows its seals.`
              : `A gasket of ${part} turned, or home-made without every hole, closes an oil, drain or vent hole.`,
          ]),
      ...(given.sealant ? ['Too much sealant: beads break off inside and block strainers and oil holes.'] : []),
      'Thickness counts in the float: another gasket means measuring the loop again.',
    ]
  },
}
