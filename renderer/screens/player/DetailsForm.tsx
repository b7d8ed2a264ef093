/** The fields of a player and of the guardian. */
import { Box, Button, Stack } from '@mui/material'
import { ageYears } from '../../../shared/engine/visit/age.ts'
import { sexes } from '../../../shared/engine/visit/terms.ts'
import { today } from '../../parts/dates.ts'
import { Field, Sheet, Trouble } from '../../parts/form.tsx'
import { guardianPaths, personPaths, titleOf } from './details.ts'
import type { PlayerForm } from './usePlayerForm.ts'

const types: Record<string, string> = {
	birthDate: 'date',
	email: 'email',
	phone: 'tel',
	'guardian.email': 'email',
	'guardian.phone': 'tel',
}
const needed = ['givenName', 'familyName', 'birthDate', 'sex']
const isMinor = (birthDate = ''): boolean =>
	/^\d{4}-\d\d-\d\d$/.test(birthDate) && ageYears(birthDate, today()) < 18
const guardianHints = {
	minor: 'This player is under 18: name the parent or guardian who comes along or consents.',
	adult: 'Needed for a player under 18; else leave it empty.',
}

export function DetailsForm({ typed, isNew }: { typed: PlayerForm; isNew: boolean }) {
	const field = (path: string) => (
		<Field
			key={path}
			label={titleOf(path)}
			value={typed.form[path] ?? ''}
			type={types[path]}
			optional={!needed.includes(path)}
			error={typed.wrong[path]}
			options={path === 'sex' ? sexes : undefined}
			focus={isNew && path === 'givenName'}
			set={(value) => typed.put(path, value)}
		/>
	)
	return (
		<Stack
			component="form"
			noValidate
			spacing={3}
			onSubmit={(event) => {
				event.preventDefault()
				void typed.save()
			}}
		>
			<Sheet title="Details">{personPaths.map(field)}</Sheet>
			<Sheet
				title="Guardian"
				hint={guardianHints[isMinor(typed.form.birthDate) ? 'minor' : 'adult']}
			>
				{guardianPaths.map(field)}
			</Sheet>
			<Trouble says={typed.says} />
			<Box>
				<Button
					type="submit"
					variant={isNew ? 'contained' : 'outlined'}
					size="large"
					disabled={typed.busy}
				>
					Save player
				</Button>
			</Box>
		</Stack>
	)
}
