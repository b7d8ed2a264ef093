/** An entry that was typed twice: what stands, what was typed too, by whom and when; one is kept. */
import { Box, Button, Typography } from '@mui/material'
import { useState } from 'react'
import { type DraftContent, draftContentSchema } from '../../shared/contract.ts'
import { keysOfField } from '../../shared/engine/visit/entries.ts'
import { keepStanding, takeOther, twoOf } from '../../shared/engine/visit/entry-at.ts'
import { rowNames } from '../../shared/engine/visit/rows.ts'
import type { TypedTwice } from '../../shared/engine/visit/typed-twice.ts'
import { entryName, entryWords } from '../../shared/engine/words/en/typed-twice.ts'

interface SettleProps {
	line: TypedTwice
	draft: DraftContent
	change: (update: (now: DraftContent) => DraftContent) => void
}
const clock = (moment: string): string => new Date(moment).toLocaleTimeString('en-GB')
const typedBy = (by: string, at: string): string => `${by || 'somebody'}, ${clock(at)}`
const belongsNowhere =
	'This cannot be taken any more: what it belonged to was taken out. Type it again where it belongs.'

function Settle({ line, draft, change }: SettleProps) {
	const [says, setSays] = useState('')
	const { keys, pair, stands, other } = twoOf(draft, line)
	const name = entryName(keys, pair)
	const [kept, taken] = [entryWords(stands, keys), entryWords(other, keys)]
	const take = () => {
		if (draftContentSchema.safeParse(takeOther(draft, line)).success)
			change((now) => takeOther(now, line))
		else setSays(belongsNowhere)
	}
	return (
		<Box sx={{ display: 'flex', flexWrap: 'wrap', alignItems: 'center', columnGap: 1 }}>
			<Typography variant="body2" sx={{ flex: '1 1 18rem' }}>
				<strong>{name}:</strong> {kept} stands ({typedBy(line.standsBy, line.standsAt)}); {taken}{' '}
				was typed too ({typedBy(line.by, line.at)}).
				{says === '' ? null : (
					<Box component="span" role="alert" sx={{ display: 'block', color: 'error.main' }}>
						{says}
					</Box>
				)}
			</Typography>
			<Button
				variant="outlined"
				aria-label={`Keep ${kept}: ${name}`}
				onClick={() => change((now) => keepStanding(now, line))}
			>
				Keep {kept}
			</Button>
			<Button variant="outlined" aria-label={`Take ${taken}: ${name}`} onClick={take}>
				Take {taken}
			</Button>
		</Box>
	)
}
interface Draft extends Pick<SettleProps, 'draft' | 'change'> {}
const keyOf = ({ path, at, is }: TypedTwice): string => `${path} ${at} ${is}`
/** All entries of the draft that were typed twice, each by its name. */
export function AllTypedTwice({ draft, change }: Draft) {
	return (draft.typedTwice ?? []).map((line) => (
		<Settle key={keyOf(line)} {...{ line, draft, change }} />
	))
}
/** Those of one field, below its row. @param path of the field in the visit */
export function TypedTwiceAt({ path, draft, change }: Draft & { path: string }) {
	if (!draft.typedTwice) return null
	const at = keysOfField(path, rowNames(draft))?.join('.')
	const lines = draft.typedTwice.filter((line) => line.keys.join('.') === at)
	if (lines.length === 0) return null
	return (
		<Box sx={{ borderLeft: 3, borderColor: 'warning.main', pl: 1, mb: 1 }}>
			{lines.map((line) => (
				<Settle key={keyOf(line)} {...{ line, draft, change }} />
			))}
		</Box>
	)
}
