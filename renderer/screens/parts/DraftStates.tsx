/** A draft that is open elsewhere too: who has it, what was typed twice, how it ended. */
import { useState } from 'react'
import type { DraftContent } from '../../../shared/contract.ts'
import type { TypedTwice } from '../../../shared/engine/visit/typed-twice.ts'
import { TypedTwiceAt } from '../../parts/TypedTwice.tsx'
import { AlsoOpen } from '../assessment/AlsoOpen.tsx'
import type { OpenDraft } from '../assessment/useDraft.ts'
import { Specimen } from './Specimen.tsx'
import { draft, latest, longName } from './sample.ts'

const width = 'feet.left.ballWidthMm'
const at = (clock: string): string => `2027-01-20T${clock}:00.000Z`
const twice = (by: string, field: string, typed: number): TypedTwice => ({
	path: `visit.${field}`,
	keys: ['visit', ...field.split('.')],
	is: JSON.stringify([typed]),
	by,
	at: at('10:02'),
	standsBy: 'Imke Darrow',
	standsAt: at('10:01'),
})
const typedTwice = [twice(longName, width, 97), twice('', 'feet.right.ballWidthMm', 99)]
const other = { by: 'Imke Darrow', since: at('09:58') }
const open: OpenDraft = {
	content: draft,
	known: draft,
	others: [],
	ended: undefined,
	earlier: [],
	lacking: [],
	amends: undefined,
	draftId: 'sample',
	playerId: 'sample',
	saved: { state: 'saved', says: 'Saved 10:02:00' },
	change: () => {},
	saveNow: () => Promise.resolve(),
	saveToSign: () => Promise.resolve(''),
	closed: () => {},
	undo: () => false,
	redo: () => false,
}
const typedHere: DraftContent = { ...draft, visit: { ...latest, visitDate: '2027-01-21' } }
const states: readonly { name: string; of: Partial<OpenDraft> }[] = [
	{
		name: 'open in two other windows, one of them with a long name',
		of: { others: [{ ...other }, { ...other, by: longName, typedAt: at('10:03') }] },
	},
	{
		name: 'signed elsewhere, all of it saved',
		of: { ended: { how: 'signed', by: 'Imke Darrow', at: at('10:04') } },
	},
	{
		name: 'gone, and something typed here is not in it',
		of: { ended: { how: 'gone' }, content: typedHere },
	},
]
/** What was chosen takes the line away, as on the page. */
function Twice({ all }: { all: boolean }) {
	const [content, setContent] = useState<DraftContent>({ ...draft, typedTwice })
	const change = (update: (now: DraftContent) => DraftContent) => setContent(update)
	if (all) return <AlsoOpen open={{ ...open, content, change }} />
	return <TypedTwiceAt path={width} draft={content} change={change} />
}
export function DraftStates() {
	return (
		<>
			<Specimen
				part="AlsoOpen"
				states={states.map(({ name, of }) => ({
					name,
					part: <AlsoOpen open={{ ...open, ...of }} />,
				}))}
			/>
			<Specimen
				part="TypedTwice"
				states={[
					{ name: 'all of a draft', part: <Twice all /> },
					{ name: 'below its field', part: <Twice all={false} /> },
				]}
			/>
		</>
	)
}
