/** For whom the consents of a roster are: a list says to what, not to whom. */
import { Box, FormControlLabel, Switch, Typography } from '@mui/material'
import type {
	RosterPeople as People,
	SharingRole,
} from '../../../shared/desk/squad/roster-sharing.ts'
import { Field } from '../../parts/form.tsx'
import type { Preview, RosterState } from './useRoster.ts'

const asked: Record<SharingRole, string> = {
	coach: 'Coach or club',
	doctor: 'Doctor or physiotherapist',
	laboratory: 'Laboratory',
}
const nobody: NonNullable<People[SharingRole]> = { name: '', email: '', emailAgain: '' }
/** The roles that consents are given for and that nobody is named for yet, in words. */
export const peopleOpen = (preview: Preview, people: People): string[] =>
	preview.asksFor
		.filter((role) => !people[role]?.name.trim())
		.map((role) => asked[role].toLowerCase())

type PeopleProps = Pick<RosterState, 'people' | 'setPeople'> & { preview: Preview }
export function RosterPeople({ preview, people, setPeople }: PeopleProps) {
	return preview.asksFor.map((role) => {
		const person = people[role] ?? nobody
		const put = (more: Partial<typeof person>) =>
			setPeople({ ...people, [role]: { ...person, ...more } })
		return (
			<Box key={role} role="group" aria-label={asked[role]} sx={{ display: 'grid', gap: 1.5 }}>
				<Typography sx={{ fontWeight: 600 }}>
					Consents of this list are for one person: {asked[role].toLowerCase()}
				</Typography>
				<Box
					sx={{
						display: 'grid',
						gap: 2,
						gridTemplateColumns: 'repeat(auto-fit, minmax(14rem, 1fr))',
					}}
				>
					<Field
						label={`Name, ${asked[role].toLowerCase()}`}
						value={person.name}
						set={(name) => put({ name })}
					/>
					<Field
						label="E-mail address"
						value={person.email}
						set={(email) => put({ email, warningsRead: undefined })}
						optional
					/>
					<Box onPaste={(event) => event.preventDefault()}>
						<Field
							label="E-mail address once more"
							value={person.emailAgain}
							set={(emailAgain) => put({ emailAgain })}
							optional
						/>
					</Box>
				</Box>
				{person.email !== '' && (
					<FormControlLabel
						control={
							<Switch
								checked={person.warningsRead === true}
								onChange={({ target }) => put({ warningsRead: target.checked || undefined })}
							/>
						}
						label="The address was read aloud and is right"
					/>
				)}
			</Box>
		)
	})
}
