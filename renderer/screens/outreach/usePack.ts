/** A pack before it is made: whom and what it carries, and its passphrase. */
import { useState } from 'react'
import type { InputOf } from '../../../shared/contract.ts'
import { leastPassphrase } from '../../../shared/desk/workplace/passphrase.ts'
import { addDays } from '../../../shared/engine/plain/days.ts'
import { today } from '../../parts/dates.ts'
import { counted } from '../../parts/Needs.tsx'
import { change } from '../../query.ts'
import { leftWords } from './words.ts'

/** Days for which a pack opens, unless another day is chosen. */
const defaultDays = 14

export interface Pack {
	playerIds: readonly string[]
	history: InputOf<'outreach.makePack'>['history']
	folder: string
	/** YYYY-MM-DD */
	expires: string
	passphrase: string
	/** the passphrase once more */
	again: string
}
export type PutPack = (typed: Partial<Pack>) => void
const empty = (): Pack => ({
	playerIds: [],
	history: 'last',
	folder: '',
	expires: addDays(today(), defaultDays),
	passphrase: '',
	again: '',
})
/** @throws Error in words */
function checkPassphrase({ passphrase, again }: Pack): void {
	if (passphrase.length < leastPassphrase)
		throw new Error(
			`Passphrase of the pack has ${passphrase.length} characters. Choose one of ` +
				`${leastPassphrase} or more.`,
		)
	if (passphrase !== again) throw new Error('The two passphrases differ. Type the same one twice.')
}
export function usePack(): { pack: Pack; put: PutPack; make: () => Promise<string> } {
	const [pack, setPack] = useState(empty)
	const put: PutPack = (typed) => setPack((now) => ({ ...now, ...typed }))
	const make = async () => {
		checkPassphrase(pack)
		const { playerIds, history, folder, passphrase, expires } = pack
		const { file, players, records, left } = await change('outreach.makePack', {
			playerIds: [...playerIds],
			history,
			folder,
			passphrase,
			expires,
		})
		put({ passphrase: '', again: '' })
		return (
			`${file} was written: ${counted(players, 'player')}, ` +
			`${counted(records, 'record')}. Open it on a laptop without records: first start, ` +
			`"Bring these records here".${leftWords(left)}`
		)
	}
	return { pack, put, make }
}
