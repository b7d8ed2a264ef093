/** What is added under each heel in each pair, with the limits above which it warns. */
import { Alert, Stack } from '@mui/material'
import type { Side } from '../../../../shared/engine/visit/visit.ts'
import { Basis } from '../../../parts/Basis.tsx'
import { clinicProtocol as protocol } from '../../../parts/clinicProtocol.ts'
import { typedText, typeFields } from './answering.ts'
import type { FieldsProps } from './ChangeFields.tsx'
import { MmField } from './MmField.tsx'
import { nameOfPair, raiseField, readRaises } from './proposedFields.ts'
import { SideTable } from './SideTable.tsx'

export function RaiseFields({ draft, change, question, fields }: FieldsProps) {
	const rows = fields.raise ?? []
	const pairs = rows.map(({ pair }) => pair)
	const texts = Object.fromEntries(
		rows.flatMap(({ pair, left, right }) => [
			[raiseField(pair, 'left'), typedText(draft, question, raiseField(pair, 'left'), left)],
			[raiseField(pair, 'right'), typedText(draft, question, raiseField(pair, 'right'), right)],
		]),
	)
	const { wrong } = readRaises(pairs, texts)
	const put = (field: string, typed: string) => {
		const next = { ...texts, [field]: typed }
		const { raise } = readRaises(pairs, next)
		change((now) => typeFields(now, question, next, raise && { raise }))
	}
	const field = (pair: string, side: Side) => (
		<MmField
			label={`${nameOfPair(draft.visit, pair)}, ${side}`}
			text={texts[raiseField(pair, side)] ?? ''}
			wrong={wrong[raiseField(pair, side)] ?? ''}
			set={(typed) => put(raiseField(pair, side), typed)}
		/>
	)
	return (
		<Stack spacing={2}>
			<SideTable
				label="Heel raise as changed"
				of="Pair"
				rows={pairs.map((pair) => ({
					key: pair,
					name: nameOfPair(draft.visit, pair),
					left: field(pair, 'left'),
					right: field(pair, 'right'),
				}))}
			/>
			<HighRaise highestMm={Math.max(0, ...rows.flatMap(({ left, right }) => [left, right]))} />
		</Stack>
	)
}
/** The warning about a high raise, with what it rests on. */
function HighRaise({ highestMm }: { highestMm: number }) {
	const warnMm = protocol.value('ankle.raiseWarnMm')
	const stopMm = protocol.value('ankle.raiseStopMm')
	if (highestMm <= warnMm) return null
	const above = highestMm > stopMm
	return (
		<Alert severity="warning">
			{above
				? `${highestMm} mm is above ${stopMm} mm in a boot. Write the reason, or lower it.`
				: `${highestMm} mm is above ${warnMm} mm in a boot. Check heel hold and stability in it.`}
			<Basis
				because={[{ measure: 'highest heel raise', value: highestMm, unit: 'mm' }]}
				basis={
					above
						? protocol.basis('Heel raise in a boot: reason required above', 'ankle.raiseStopMm')
						: protocol.basis('Heel raise in a boot: warn above', 'ankle.raiseWarnMm')
				}
			/>
		</Alert>
	)
}
