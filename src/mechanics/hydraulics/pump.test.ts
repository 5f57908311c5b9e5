import { expect, test } from 'vitest'
import {
  celsius,
  centistoke,
  litre,
  litrePerMinute,
  megapascal,
  minute,
  newtonMetre,
  rpm,
} from '../../quantity/constructors.ts'
import { hydraulicMotor } from './hydraulicMotor.ts'
import { motorEfficiency, pumpEfficiency } from './machineEfficiency.ts'
import { oilViscosity } from './oilViscosity.ts'
import { pumpFlow } from './pumpFlow.ts'
import { reliefHeat, reliefSetting } from './relief.ts'

test('a pump that nobody tested is taken as anything from worn to good', () => {
  const { low, high } = pumpFlow({ displacement: litre(0.02), speed: rpm(1500) })
  expect(high / low).toBeCloseTo(0.97 / 0.8, 9)
})

test('the efficiencies of a pump multiply to oil power over shaft power', () => {
  const pump = {
    displacement: litre(0.02),
    speed: rpm(1500),
    pressure: megapascal(14),
    flow: litrePerMinute(26),
    torque: newtonMetre(50),
  }
  const { overall, oilPower, shaftPower } = pumpEfficiency(pump)
  expect(overall).toBeCloseTo(oilPower / shaftPower, 12)
  expect(() => pumpEfficiency({ ...pump, flow: litrePerMinute(31) })).toThrow(
    'the volumetric efficiency that these readings make has to be from 0 to 1',
  )
})

test('a motor that takes its own flow and gives its own torque has no losses', () => {
  const given = { displacement: litre(0.1), pressure: megapascal(7), flow: litrePerMinute(60) }
  const { speed, torque } = hydraulicMotor(given)
  const { overall } = motorEfficiency({ ...given, speed: speed.low, torque: torque.low })
  expect(overall).toBeCloseTo(1, 9)
})

test('a relief valve is set between the work and the weakest part, or not at all', () => {
  const { setting } = reliefSetting({ working: megapascal(10), weakest: megapascal(16) })
  expect(setting?.low).toBeCloseTo(11e6, 3)
  const none = reliefSetting({ working: megapascal(13), weakest: megapascal(16) })
  expect(none.setting).toBeUndefined()
  expect(none.cautions[0]).toContain('no room')
})

test('all the oil over the relief valve warms the tank by degrees a minute', () => {
  const { warming } = reliefHeat({
    pressure: megapascal(14),
    flow: litrePerMinute(30),
    oil: litre(40),
    time: minute(1),
  })
  // 7 kW into 40 l of about 1.65 kJ/(l K): 6.4 K a minute.
  expect(warming.low).toBeLessThan(6.4)
  expect(warming.high).toBeGreaterThan(6.4)
})

test('an oil gets thinner with warmth, and its sheet is given back', () => {
  const sheet = [
    { temperature: celsius(40), viscosity: centistoke(220) },
    { temperature: celsius(100), viscosity: centistoke(19) },
  ] as const
  const at = (temperature: number) => oilViscosity({ sheet, temperature: celsius(temperature) }).low
  expect(at(40)).toBeCloseTo(220e-6, 12)
  expect(at(100)).toBeCloseTo(19e-6, 12)
  expect([at(0), at(20), at(60), at(120)]).toEqual([at(0), at(20), at(60), at(120)].sort((a, b) => b - a))
  expect(() =>
    oilViscosity({ sheet: [sheet[0], { ...sheet[1], viscosity: centistoke(300) }], temperature: celsius(60) }),
  ).toThrow('thinner where it is warmer')
  expect(() => oilViscosity({ sheet, temperature: celsius(200) })).toThrow(
    'the temperature has to be from −20 °C to 150 °C',
  )
})

test('refuses a thread of oil that is no pump', () => {
  expect(() => pumpFlow({ displacement: litre(0), speed: rpm(1500) })).toThrow('the displacement has to be above 0 l')
  expect(() => pumpFlow({ displacement: litre(1), speed: rpm(1500), volumetric: 1.1 })).toThrow(
    'the volumetric efficiency',
  )
  expect(() => reliefSetting({ working: megapascal(0), weakest: megapascal(16) })).toThrow('the working pressure')
})

test('what stands at full flow is told from the lowest setting to the highest, and without room how far it goes over', () => {
  const roomy = reliefSetting({ working: megapascal(10), weakest: megapascal(16) })
  expect(roomy.atFullFlow.low).toBeCloseTo(megapascal(11 * 1.1), 3)
  expect(roomy.atFullFlow.high).toBeCloseTo(megapascal(16), 3)
  const tight = reliefSetting({ working: megapascal(15), weakest: megapascal(16) })
  expect(tight.hasRoom).toBe('no')
  expect(tight.setting).toBeUndefined()
  expect(tight.atFullFlow.high).toBeCloseTo(megapascal(16.5 * 1.25), 3)
})
