/** The reasons beneath a proposal, one line for one thing; below them caveats as footnotes. */
import { Box, Button, Stack, Typography } from '@mui/material'
import { useState } from 'react'
import type { Finding } from '../../../../shared/engine/findings/finding.ts'
import { Disclosure } from '../../../parts/Disclosure.tsx'
import type { DraftProps } from '../stepProps.ts'
import { findingsIn } from './answering.ts'
import { FindingLine, LevelChip, Reasons } from './FindingLine.tsx'
import { type FindingGroup, footnotesOf, groupsOf } from './findingGroups.ts'
import { pairsOf } from './proposedFields.ts'
import type { AskedProps } from './stepTypes.ts'

const list = { m: 0, p: 0, listStyle: 'none' } as const

export function Findings({ question, given, assessment, draft, change }: AskedProps) {
	const findings = findingsIn(question, given)
	const reasons = pairsOf(assessment, question).flatMap((pair) => pair.reasons ?? [])
	return (
		<>
			<Stack component="ul" sx={list} aria-label="Findings behind it">
				{groupsOf(findings, reasons).map((group) =>
					group.findings.length === 1 && group.findings[0] ? (
						<FindingLine
							key={group.key}
							finding={group.findings[0]}
							draft={draft}
							change={change}
						/>
					) : (
						<Group key={group.key} group={group} draft={draft} change={change} />
					),
				)}
			</Stack>
			<Footnotes findings={footnotesOf(findings)} draft={draft} change={change} />
		</>
	)
}
/** What several findings say alike; one by one they can be changed or left out. */
function Group({ group, draft, change }: DraftProps & { group: FindingGroup }) {
	const { findings, says } = group
	const [apart, setApart] = useState(false)
	const [first] = findings
	if (!first) return null
	return (
		<Box component="li" sx={{ borderTop: 1, borderColor: 'divider', py: 0.5 }}>
			<Stack
				direction="row"
				useFlexGap
				sx={{ flexWrap: 'wrap', columnGap: 1.5, alignItems: 'baseline' }}
			>
				<LevelChip level={first.level} />
				<Box sx={{ flex: '1 1 14rem' }}>
					<Typography>{says.join(' ')}</Typography>
					<Reasons because={findings.flatMap(({ because }) => because)} />
				</Box>
				<Button
					size="small"
					aria-expanded={apart}
					onClick={() => setApart(!apart)}
					sx={{ minHeight: 44 }}
				>
					One by one
				</Button>
			</Stack>
			{apart && (
				<Box component="ul" sx={{ ...list, pl: 2 }}>
					{findings.map((finding) => (
						<FindingLine key={finding.id} finding={finding} draft={draft} change={change} />
					))}
				</Box>
			)}
		</Box>
	)
}
/** Caveats about how it was worked out: read, not decided. */
function Footnotes({ findings, draft, change }: DraftProps & { findings: readonly Finding[] }) {
	if (findings.length === 0) return null
	return (
		<Box sx={{ borderTop: 1, borderColor: 'divider', pt: 1 }}>
			<Box
				component="ol"
				aria-label="Footnotes"
				sx={{ m: 0, pl: 2.5, fontSize: '0.8125rem', color: 'text.secondary' }}
			>
				{findings.map(({ id, says }) => (
					<li key={id}>{says}</li>
				))}
			</Box>
			<Disclosure label="Footnotes: basis, words on the page">
				<Box component="ul" sx={list}>
					{findings.map((finding) => (
						<FindingLine key={finding.id} finding={finding} draft={draft} change={change} />
					))}
				</Box>
			</Disclosure>
		</Box>
	)
}
