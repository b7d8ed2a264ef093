/**
 * How to take the measure in hand, with its value large enough to read from where the foot is held:
 * the picture and the steps.
 */
import { Box, Button, Typography } from '@mui/material'
import type { ReactNode } from 'react'
import type { DraftContent } from '../../shared/contract.ts'
import { fieldMeta } from '../../shared/engine/visit/field-meta.ts'
import { measureAt } from '../../shared/engine/visit/measures/catalogue.ts'
import { asNumber } from '../../shared/engine/visit/measures/value.ts'
import { meanOf, rounded } from '../../shared/engine/visit/sides.ts'
import { visitSchema } from '../../shared/engine/visit/visit.ts'
import { readPath } from './draft-path.ts'
import { MeasureHelpCard } from './help/Help.tsx'
import { helpOf } from './help/topic.ts'
import { sideOf } from './measure/fieldState.ts'
import { unitShown } from './units.ts'

interface MeasuringProps {
	path: string
	draft: DraftContent
	/** Back to what it stands in the place of. */
	close: () => void
}
/** What the field says, large; and why it says no value. */
function Value({ path, draft }: Pick<MeasuringProps, 'path' | 'draft'>) {
	const reason = draft.visit.notMeasured?.[path]
	const shown = shownValue(path, draft)
	if (draft.raw[path] !== undefined) return <Aside colour="error.main">not a value yet</Aside>
	if (reason !== undefined) return <Aside>not measured: {reason}</Aside>
	if (shown === undefined) return <Aside colour="text.secondary">waiting for the reading</Aside>
	const { kind, unit } = fieldMeta(visitSchema, path)
	return (
		<>
			{shown}{' '}
			<Box component="span" sx={{ fontSize: '1.25rem', fontWeight: 400 }}>
				{kind === 'number' ? unitShown(unit) : ''}
			</Box>
		</>
	)
}
const Aside = ({ colour, children }: { colour?: string; children: ReactNode }) => (
	<Box component="span" sx={{ fontSize: '1.25rem', color: colour }}>
		{children}
	</Box>
)
/** A term in words, the sum of items, or the mean of repeats. */
function shownValue(path: string, { visit }: DraftContent): string | number | undefined {
	const value = readPath(visit, path) as number | number[] | string | undefined
	if (typeof value === 'string') return value.replaceAll('-', ' ')
	const placed = measureAt(path)
	const shown = placed ? asNumber(placed.measure, value) : meanOf(value)
	return shown === undefined ? undefined : rounded(shown, 1)
}
/** Help on the field in hand, in the place of the result. */
export function Measuring({ path, draft, close }: MeasuringProps) {
	const help = helpOf(path)
	if (!help) return null
	const side = sideOf(path)
	return (
		<Box component="section" aria-label="How to measure" sx={{ display: 'grid', gap: 1 }}>
			<Box sx={{ display: 'flex', flexWrap: 'wrap', columnGap: 2, alignItems: 'baseline' }}>
				<Typography variant="h2">
					{help.title}
					{side ? `, ${side}` : ''}
				</Typography>
				<Typography
					component="p"
					sx={{ fontSize: '1.75rem', fontWeight: 700, fontVariantNumeric: 'tabular-nums' }}
				>
					<Value path={path} draft={draft} />
				</Typography>
				<Button
					variant="text"
					size="small"
					aria-keyshortcuts="F1"
					onClick={close}
					sx={{ ml: 'auto', px: 1, fontWeight: 400 }}
				>
					F1: back to the result
				</Button>
			</Box>
			<MeasureHelpCard help={help} side={side} />
		</Box>
	)
}
