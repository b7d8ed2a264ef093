/** The insert that goes on being worn: what is done to it, line by line, or a new one in its place. */
import { Box, Button, Checkbox, FormControlLabel, Typography } from '@mui/material'
import { present } from '../../../../shared/engine/plain/present.ts'
import type { Adjustment } from '../../../../shared/engine/visit/recorded/insert-worn.ts'
import { mostAdjustments } from '../../../../shared/engine/visit/recorded/insert-worn.ts'
import { bothSides } from '../../../../shared/engine/visit/sides.ts'
import { elementText } from '../../../../shared/engine/words/en/insert-names.ts'
import { capital } from '../../../../shared/engine/words/words.ts'
import { dayInWords } from '../../../parts/dates.ts'
import { InsertBefore } from '../since/InsertWorn.tsx'
import { AdjustRow } from './AdjustRow.tsx'
import { amountField, readAmount } from './adjusting.ts'
import { changedIn, changeFields, typedText, typeFields } from './answering.ts'
import type { AskedProps } from './stepTypes.ts'

type Worn = NonNullable<AskedProps['draft']['visit']['insertWorn']>
/** What it is made of, each foot in a line. */
function AsItIs({ worn }: { worn: Worn }) {
	return bothSides.map((side) => {
		const elements = worn[side]?.elements ?? []
		if (elements.length === 0) return null
		return (
			<Typography key={side} variant="body2">
				{capital(side)}: {elements.map((one) => elementText(present(one))).join('; ')}.
			</Typography>
		)
	})
}
export function InsertKept(props: AskedProps) {
	const { draft, change, assessment, question } = props
	const kept = assessment.prescription.insertKept
	const worn = draft.visit.insertWorn
	if (!kept || !worn) return null
	const given = changedIn(draft.decisions, question)
	const lines = given.adjust ?? kept.lines
	const anew = given.anew === true
	return (
		<Box sx={{ display: 'grid', gap: 1 }}>
			<Typography variant="h3">Insert of {dayInWords(kept.orderedOn)}</Typography>
			<InsertBefore {...worn} />
			<AsItIs worn={worn} />
			{!anew && <Lines {...props} lines={lines} />}
			<FormControlLabel
				control={
					<Checkbox
						checked={anew}
						onChange={({ target }) =>
							change((now) => changeFields(now, question, { adjust: lines, anew: target.checked }))
						}
					/>
				}
				label="Order a new insert in its place"
			/>
		</Box>
	)
}
function Lines({ lines, ...props }: AskedProps & { lines: readonly Adjustment[] }) {
	const { draft, change, assessment, question } = props
	const { insert, insertKept } = assessment.prescription
	const free = bothSides.filter((side) => insert[side].state !== 'held')
	const textOf = (at: number) => {
		const { mm, deg } = lines[at] ?? {}
		return typedText(draft, question, amountField(at), mm ?? deg)
	}
	/** Every text goes with its line, also where another line is left out. */
	const put = (next: readonly Adjustment[]) => {
		const texts = Object.fromEntries(lines.map((_, at) => [amountField(at), '']))
		change((now) => typeFields(now, question, texts, { adjust: [...next] }))
	}
	const type = (at: number, line: Adjustment, text: string) => {
		const { line: sized, wrong } = readAmount(line, text)
		const adjust = lines.map((one, place) => (place === at && sized ? sized : one))
		change((now) =>
			typeFields(now, question, { [amountField(at)]: text }, wrong === '' ? { adjust } : undefined),
		)
	}
	const [side] = free
	return (
		<>
			{lines.length === 0 && <Typography>Nothing is done to it: it is worn as it is.</Typography>}
			{lines.map((line, at) => (
				<AdjustRow
					// biome-ignore lint/suspicious/noArrayIndexKey: two lines may be alike
					key={at}
					line={line}
					sides={free}
					text={textOf(at)}
					proposed={insertKept?.proposed ?? []}
					put={(next) => put(lines.map((one, place) => (place === at ? next : one)))}
					type={(text) => type(at, line, text)}
					leaveOut={() => put(lines.filter((_, place) => place !== at))}
				/>
			))}
			{side && lines.length < mostAdjustments && (
				<Button
					variant="outlined"
					sx={{ justifySelf: 'start' }}
					onClick={() => put([...lines, { side, place: 'heel', act: 'maker-judges' }])}
				>
					Add a change
				</Button>
			)}
		</>
	)
}
