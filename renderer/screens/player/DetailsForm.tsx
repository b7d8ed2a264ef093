/** The fields of a player and of the guardian. */
import { Box, Button, Stack } from '@mui/material'
import { isAdultOn } from '../../../shared/engine/facts/age.ts'
import { sexes } from '../../../shared/engine/visit/terms.ts'
import { clinicProtocol, loadProtocol } from '../../parts/clinicProtocol.ts'
import { today } from '../../parts/dates.ts'
import { Field, Sheet, Trouble } from '../../parts/form.tsx'
import { useReading } from '../../query.ts'
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
	/^\d{4}-\d\d-\d\d$/.test(birthDate) && !isAdultOn(birthDate, today(), clinicProtocol)
function guardianHint(birthDate: string | undefined): string {
	const under = `under ${clinicProtocol.value('player.adultFromYears')}`
	return isMinor(birthDate)
		? `This player is ${under}: name the parent or guardian who comes along or consents.`
		: `Needed for a player ${under}; else leave it empty.`
}

export function DetailsForm({ typed, isNew }: { typed: PlayerForm; isNew: boolean }) {
	useReading('protocol in force', {}, ['protocol.get'], loadProtocol)
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
			<Sheet title="Guardian" hint={guardianHint(typed.form.birthDate)}>
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
