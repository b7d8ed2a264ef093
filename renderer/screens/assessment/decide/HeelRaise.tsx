/** The heel raise of each foot in mm, with the limits above which it warns or asks for a reason. */
import { Alert, Button, Stack, TextField } from '@mui/material'
import { useState } from 'react'
import type { PerSide } from '../../../../shared/engine/findings/assessment.ts'
import { highestRaise } from '../../../../shared/engine/report/signing.ts'
import { bothSides } from '../../../../shared/engine/visit/sides.ts'
import type { Side } from '../../../../shared/engine/visit/visit.ts'
import { Basis } from '../../../parts/Basis.tsx'
import type { AssessedProps, DraftProps } from '../stepProps.ts'
import { decide, raiseLimits, raiseTexts, readRaise, setRaise } from './decisions.ts'
import { Section } from './Section.tsx'
import { Words } from './Words.tsx'

export function HeelRaise({ draft, change, assessment }: AssessedProps) {
	const [texts, setTexts] = useState(() => raiseTexts(draft))
	const suggested = assessment?.ankle.heelRaiseMm
	const put = (next: PerSide<string>) => {
		setTexts(next)
		change((now) => setRaise(now, next))
	}
	return (
		<Section title="Heel raise">
			<Stack spacing={2}>
				<Stack
					direction="row"
					spacing={2}
					useFlexGap
					sx={{ flexWrap: 'wrap', alignItems: 'flex-start' }}
				>
					{bothSides.map((side) => (
						<RaiseField key={side} side={side} texts={texts} put={put} suggested={suggested} />
					))}
					<Button
						variant="outlined"
						disabled={!suggested}
						onClick={() =>
							suggested && put({ left: String(suggested.left), right: String(suggested.right) })
						}
					>
						Use the suggestion
					</Button>
				</Stack>
				<HighRaise draft={draft} change={change} />
			</Stack>
		</Section>
	)
}

interface RaiseFieldProps {
	side: Side
	/** What is typed for each foot, in mm. */
	texts: PerSide<string>
	put: (texts: PerSide<string>) => void
	/** What the engine proposes for each foot, in mm. */
	suggested: PerSide<number> | undefined
}
function RaiseField({ side, texts, put, suggested }: RaiseFieldProps) {
	const otherOnly = texts[side].trim() === '' && `${texts.left}${texts.right}`.trim() !== ''
	const wrong = readRaise(texts[side]).says || (otherOnly ? 'Give this side too; 0 for none.' : '')
	const hint = suggested ? `Suggested: ${suggested[side]} mm` : 'No raise suggested'
	return (
		<TextField
			size="small"
			label={`Heel raise, ${side} (mm)`}
			value={texts[side]}
			error={wrong !== ''}
			helperText={wrong || hint}
			onChange={(event) => put({ ...texts, [side]: event.target.value })}
			slotProps={{ htmlInput: { inputMode: 'decimal' }, inputLabel: { shrink: true } }}
		/>
	)
}

/** The warning about a high raise, and its reason where the raise is above what may stand alone. */
function HighRaise({ draft, change }: DraftProps) {
	const highest = highestRaise(draft.decisions)
	const above = highest > raiseLimits.stopMm
	const why = draft.decisions.heelRaiseWhy ?? ''
	return (
		<>
			{highest > raiseLimits.warnMm && (
				<Alert severity="warning">
					{above
						? `${highest} mm is above ${raiseLimits.stopMm} mm in a boot. Write the reason, ` +
							'or lower it.'
						: `${highest} mm is above ${raiseLimits.warnMm} mm in a boot. Check heel hold and ` +
							'stability in the boot.'}
					<Basis
						because={[{ measure: 'highest heel raise', value: highest, unit: 'mm' }]}
						basis={above ? raiseLimits.stopBasis : raiseLimits.warnBasis}
					/>
				</Alert>
			)}
			{(above || why !== '') && (
				<Words
					label={`Reason for a raise above ${raiseLimits.stopMm} mm`}
					max={500}
					required={above}
					error={above && !why.trim()}
					value={why}
					set={(text) => change((now) => decide(now, { heelRaiseWhy: text || undefined }))}
				/>
			)}
		</>
	)
}
