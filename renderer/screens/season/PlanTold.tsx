/** What a plan says: its findings with their reasons, those that ask for something first. */
import { Box, Typography } from '@mui/material'
import { type Finding, isGrave, type Level } from '../../../shared/engine/findings/finding.ts'
import { readingInWords } from '../../../shared/engine/words/reading.ts'
import { capital } from '../../../shared/engine/words/words.ts'
import { restsOn } from '../../parts/Workings.tsx'

/** In the order in which they are told. */
const order: readonly Level[] = ['stop', 'caution', 'advise', 'note']
const colours: Record<Level, string> = {
	stop: 'error.main',
	caution: 'warning.main',
	advise: 'text.primary',
	note: 'text.secondary',
}
/** Codes of findings that ask for a purchase, or for the choice of one. */
const purchases = ['season.buy', 'season.wear-or-buy']
const needsYou = (finding: Finding): boolean => isGrave(finding) || purchases.includes(finding.code)

/** Dangers, cautions and purchases in sight; what else it says one press away. */
export function PlanFindings({ findings }: { findings: readonly Finding[] }) {
	if (findings.length === 0) return null
	const sorted = findings.toSorted(
		(left, right) => order.indexOf(left.level) - order.indexOf(right.level),
	)
	const first = sorted.filter(needsYou)
	const more = sorted.filter((finding) => !needsYou(finding))
	return (
		<Box component="section" aria-labelledby="season-findings">
			<Typography variant="h2" id="season-findings">
				{first.length === 0 ? 'Nothing needs you' : `Needs you (${first.length})`}
			</Typography>
			<Findings of={first} />
			{more.length > 0 && (
				<Box
					component="details"
					sx={{ mt: 0.5, '& summary': { cursor: 'pointer', minHeight: 44, py: 1.25 } }}
				>
					<summary>What else the plan says ({more.length})</summary>
					<Findings of={more} />
				</Box>
			)}
		</Box>
	)
}
function Findings({ of }: { of: readonly Finding[] }) {
	return (
		<Box component="ul" sx={{ m: 0, mt: 0.5, p: 0, listStyle: 'none' }}>
			{of.map((finding) => (
				<Box
					component="li"
					key={finding.id}
					sx={{ borderLeft: 4, borderColor: colours[finding.level], pl: 1.25, mb: 0.75 }}
				>
					<Box component="strong" sx={{ color: colours[finding.level] }}>
						{capital(finding.level)}.
					</Box>{' '}
					{finding.says}
					<Why finding={finding} />
				</Box>
			))}
		</Box>
	)
}

function Why({ finding: { because, basis } }: { finding: Finding }) {
	if (because.length === 0 && !basis) return null
	return (
		<Box
			component="details"
			sx={{ fontSize: '0.88rem', '& summary': { cursor: 'pointer', minHeight: 44, py: 1.25 } }}
		>
			<summary>Why ({because.length})</summary>
			<Box component="ul" sx={{ m: 0, pl: 2.5 }}>
				{because.map((each) => (
					<li key={`${each.measure} ${each.side} ${each.at} ${each.value}`}>
						{readingInWords(each)}
					</li>
				))}
			</Box>
			<Typography variant="body2">{restsOn(basis)}</Typography>
		</Box>
	)
}
