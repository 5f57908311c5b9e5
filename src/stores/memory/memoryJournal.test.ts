import { journalContract } from '../testing/contract.ts'
import { memoryJournal } from './memoryJournal.ts'

const fresh = async () => memoryJournal()
journalContract('memory', async () => ({ fresh, again: fresh, stop: async () => {} }), false)
