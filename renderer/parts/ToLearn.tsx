/**
 * Pairs that were measured on the foot and differ, or do not, from what the shelf lists: a person says
 * whether the shelf takes it over. Nothing where there is none, or for whom it is not.
 */
import { Alert, Box, Button, Typography } from '@mui/material'
import type { InputOf, OutputOf } from '../../shared/contract.ts'
import { present } from '../../shared/engine/plain/present.ts'
import { termWords } from '../../shared/engine/visit/terms.ts'
import { amount, count } from '../../shared/engine/words/en/format.ts'
import { change, useHost, useHostAction } from '../query.ts'
import { dayInWords } from './dates.ts'
import { Trouble } from './form.tsx'
import { may } from './roles.ts'

type Asked = OutputOf<'shelf.toLearn'>['pairs'][number]
/** 'Tern Firm, UK 6, wide'. */
const sizeName = ({ name, system, label, fitting }: Asked): string =>
	[name, `${termWords(system)} ${label}`, fitting].filter(Boolean).join(', ')
const signed = (mm: number): string => `${mm > 0 ? '+' : ''}${amount(mm, 'mm')}`
const widthWords = ({ widthMm, listedWidthMm }: Asked): string =>
	widthMm === undefined
		? ''
		: ` Width at the ball ${amount(widthMm, 'mm')}, listed ${amount(listedWidthMm, 'mm')}.`
function measuredWords(asked: Asked): string {
	const { measuredMm, listedMm, pairs, medianMm } = asked
	return (
		`Measured ${amount(measuredMm, 'mm')} inside; the shelf says ${amount(listedMm, 'mm')}. ` +
		`With it ${count(pairs, 'pair')} measured, ${signed(medianMm)} in the middle from what was ` +
		`listed.${widthWords(asked)}`
	)
}
interface ToLearnProps {
	/** Of one visit; of all where it is left out. */
	visitId?: string
}
export function ToLearn({ visitId }: ToLearnProps) {
	const status = useHost('session.status', {})
	const role = status.value?.person?.role
	const when = role !== undefined && may(role).desk
	const { value } = useHost('shelf.toLearn', present({ visitId }), { when })
	const { busy, says, run } = useHostAction()
	if (!value || value.pairs.length === 0) return null
	const answer = (of: string, said: InputOf<'shelf.learn'>['answer']) =>
		run(async () => {
			await change('shelf.learn', { of, answer: said, ...present({ follows: value.savedAs }) })
			return ''
		})
	return (
		<Box component="section" aria-label="The shelf may learn" sx={{ display: 'grid', gap: 1 }}>
			<Typography variant="h2">The shelf may learn</Typography>
			<Trouble says={says} />
			{value.pairs.map((asked) => (
				<Alert key={asked.of} severity="info" icon={false}>
					<Typography sx={{ fontWeight: 600 }}>
						{sizeName(asked)}, {dayInWords(asked.on)}
					</Typography>
					<Typography variant="body2">{measuredWords(asked)}</Typography>
					<Box sx={{ display: 'flex', flexWrap: 'wrap', gap: 1, pt: 1 }}>
						<Button
							variant="outlined"
							disabled={busy}
							onClick={() => answer(asked.of, 'take-over')}
						>
							Take over: {amount(asked.afterMm, 'mm')}
						</Button>
						<Button disabled={busy} onClick={() => answer(asked.of, 'count-only')}>
							Count it, leave the shelf as it is
						</Button>
						<Button disabled={busy} onClick={() => answer(asked.of, 'leave-out')}>
							Leave this pair out
						</Button>
					</Box>
				</Alert>
			))}
		</Box>
	)
}
