/** One change of an insert that is worn: side, place, what is done, to what, and how much. */
import { Box, Button, TextField, Typography } from '@mui/material'
import type { ProposedAdjustment } from '../../../../shared/engine/findings/assessment.ts'
import { adjustUnit } from '../../../../shared/engine/insert/follow/unit.ts'
import type { Adjustment } from '../../../../shared/engine/visit/recorded/insert-worn.ts'
import { insertActs, insertPlaces } from '../../../../shared/engine/visit/terms.ts'
import type { Side } from '../../../../shared/engine/visit/visit.ts'
import {
	adjustmentLine,
	insertActNames,
	insertPlaceNames,
} from '../../../../shared/engine/words/en/insert-adjust.ts'
import { elementNames } from '../../../../shared/engine/words/en/insert-names.ts'
import { capital } from '../../../../shared/engine/words/words.ts'
import { Basis } from '../../../parts/Basis.tsx'
import { unitShown } from '../../../parts/units.ts'
import { readAmount, withElement } from './adjusting.ts'
import { Choice } from './Choice.tsx'

interface AdjustRowProps {
	line: Adjustment
	/** The feet of which nothing is held. */
	sides: readonly Side[]
	/** How much, as typed. */
	text: string
	proposed: readonly ProposedAdjustment[]
	put: (line: Adjustment) => void
	type: (text: string) => void
	leaveOut: () => void
}
const isSame = (one: Adjustment, other: Adjustment): boolean =>
	one.side === other.side &&
	one.place === other.place &&
	one.act === other.act &&
	one.element === other.element
/** As wide as their words, and no wider than the room. */
const fields = {
	display: 'grid',
	gridTemplateColumns: 'repeat(auto-fill, minmax(min(10.5rem, 100%), 1fr))',
	gap: 1.5,
	pt: 1,
	flex: '1 1 16rem',
	minWidth: 0,
} as const
export function AdjustRow(props: AdjustRowProps) {
	const { line, text, proposed, leaveOut } = props
	const own = proposed.find((one) => isSame(one.line, line))
	const name = capital(adjustmentLine(line))
	const leave = (
		<Button onClick={leaveOut} aria-label={`Leave out: ${name}`}>
			Leave out
		</Button>
	)
	return (
		<Box role="group" aria-label={name} sx={{ borderTop: 1, borderColor: 'divider', pt: 0.5 }}>
			{own ? (
				<Basis because={[]} basis={own.basis} head={<Fields {...props} />} end={leave} />
			) : (
				<>
					<Fields {...props} />
					{leave}
				</>
			)}
			{own?.against.map(({ says }) => (
				<Typography key={says} variant="body2" color="warning.main">
					Caution: {says}
				</Typography>
			))}
			{text.trim() === '' && line.act !== 'maker-judges' && (
				<Typography variant="body2" color="text.secondary">
					How much is left to the laboratory.
				</Typography>
			)}
		</Box>
	)
}
/** Terms of a list in words that begin with a capital. */
const inWords = <Term extends string>(terms: readonly (readonly [Term, string])[]) =>
	terms.map(([term, words]) => [term, capital(words)] as const)
const whole = 'whole insert'
function Fields({ line, sides, text, put, type }: AdjustRowProps) {
	const unit = adjustUnit(line.element)
	const { wrong } = readAmount(line, text)
	return (
		<Box sx={fields}>
			<Choice
				narrow
				label="Side"
				value={line.side}
				options={inWords(sides.map((side) => [side, side] as const))}
				set={(side) => put({ ...line, side })}
			/>
			<Choice
				narrow
				label="Where"
				value={line.place}
				options={inWords(insertPlaces.map((place) => [place, insertPlaceNames[place]] as const))}
				set={(place) => put({ ...line, place })}
			/>
			<Choice
				narrow
				label="What is done"
				value={line.act}
				options={inWords(insertActs.map((act) => [act, insertActNames[act]] as const))}
				set={(act) => put({ ...line, act })}
			/>
			<Choice
				narrow
				label="To what"
				value={line.element ?? ''}
				options={inWords([['', whole] as const, ...Object.entries(elementNames)])}
				set={(element) => put(withElement(line, element || undefined))}
			/>
			<TextField
				size="small"
				label={`How much (${unitShown(unit)})`}
				value={text}
				error={wrong !== ''}
				helperText={wrong}
				onChange={({ target }) => type(target.value)}
				slotProps={{
					htmlInput: { inputMode: 'decimal', autoComplete: 'off' },
					inputLabel: { shrink: true },
				}}
			/>
			<TextField
				size="small"
				label="In words (may be left out)"
				value={line.words ?? ''}
				onChange={({ target }) => {
					const { words: _, ...rest } = line
					put(target.value === '' ? rest : { ...rest, words: target.value })
				}}
				slotProps={{ htmlInput: { maxLength: 200 }, inputLabel: { shrink: true } }}
			/>
		</Box>
	)
}
