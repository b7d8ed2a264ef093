/** The details of a player as they are saved, to be read. */
import { Alert, Typography } from '@mui/material'
import { nameProblems } from '../../../shared/engine/visit/names.ts'
import { languageName } from '../../../shared/engine/words/en/languages.ts'
import { fullPaperName } from '../../../shared/engine/words/names.ts'
import { dayInWords } from '../../parts/dates.ts'
import { Panel } from '../../parts/panels.tsx'
import type { Player } from './details.ts'
import { Facts } from './Facts.tsx'

/** Names of before that no page can print: said here, not first when a report is drawn. */
function Unprintable({ player }: { player: Player }) {
	if (nameProblems(player).length === 0) return null
	return (
		<Alert severity="warning" sx={{ mb: 1 }}>
			A name cannot be printed. Add its spelling in Latin letters under Edit details, or no page of
			this player can be drawn.
		</Alert>
	)
}
export function DetailsShown({ player }: { player: Player }) {
	const { birthDate, sex, club, email, phone, latinName, guardian, preferredLanguage } = player
	const ofGuardian = guardian?.preferredLanguage
	const facts: [string, string | null | undefined][] = [
		['Born', dayInWords(birthDate)],
		['Sex', sex],
		['On paper', latinName && fullPaperName(player)],
		['Preferred language', preferredLanguage && languageName(preferredLanguage)],
		['Club', club],
		['E-mail', email],
		['Phone', phone],
		['Guardian', guardian && [guardian.name, guardian.relation].filter(Boolean).join(', ')],
		['On paper', guardian?.latinName],
		['Guardian e-mail', guardian?.email],
		['Guardian phone', guardian?.phone],
		['Guardian prefers', ofGuardian && languageName(ofGuardian)],
	]
	const known = facts.flatMap(([name, says]): [string, string][] => (says ? [[name, says]] : []))
	return (
		<Panel named title="Details">
			<Unprintable player={player} />
			<Facts facts={known} />
			{!email && !phone && !guardian?.email && !guardian?.phone && (
				<Typography color="textSecondary" sx={{ mt: 1 }}>
					No e-mail and no phone on record.
				</Typography>
			)}
		</Panel>
	)
}
