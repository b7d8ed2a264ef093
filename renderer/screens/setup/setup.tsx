/** First start: letterhead, clinician, passphrase; then the recovery key to keep on paper. */
import { Box, Button, Stack, Typography } from '@mui/material'
import { leastPassphrase } from '../../../shared/desk/workplace/passphrase.ts'
import { contrastWords } from '../../../shared/engine/report/colour.ts'
import { Field, Sheet, Trouble } from '../../parts/form.tsx'
import { mostLines, titleOf, typedIn } from './clinicForm.ts'
import { LogoFile } from './LogoFile.tsx'
import { RecoveryKey } from './RecoveryKey.tsx'
import { type SettingUp, useSetup } from './useSetup.ts'

function ClinicField({
	of: { form, wrong, put },
	path,
	...more
}: { of: SettingUp; path: string } & Partial<Parameters<typeof Field>[0]>) {
	return (
		<Field
			label={titleOf(path)}
			value={form[path] ?? ''}
			set={(value) => put(path, value)}
			error={wrong[path]}
			{...more}
		/>
	)
}
function LetterheadSheet({ of }: { of: SettingUp }) {
	return (
		<Sheet title="Letterhead" hint="Stands at the head of every report.">
			<ClinicField of={of} path="name" focus autoComplete="organization" />
			<ClinicField of={of} path="phone" optional type="tel" hint="May be left empty." />
			<ClinicField
				of={of}
				path="address"
				optional
				rows={mostLines}
				hint={`Up to ${mostLines} lines. May be left empty.`}
			/>
			<Stack spacing={2.5}>
				<ClinicField of={of} path="email" optional type="email" hint="May be left empty." />
				<ClinicField
					of={of}
					path="colour"
					type="color"
					hint={contrastWords(typedIn(of.form, 'colour')).says}
				/>
			</Stack>
			<LogoFile logo={of.logo} wrong={of.wrong.logo} set={of.putLogo} />
		</Sheet>
	)
}
function PassphraseSheet({ of: { form, wrong, put } }: { of: SettingUp }) {
	return (
		<Sheet
			title="Opening the records"
			hint="Several plain words are easier to keep in mind and harder to guess than one odd word."
		>
			<Field
				label="Passphrase"
				type="password"
				autoComplete="new-password"
				value={form.passphrase ?? ''}
				set={(value) => put('passphrase', value)}
				error={wrong.passphrase}
				hint={`${leastPassphrase} characters or more.`}
			/>
			<Field
				label="Passphrase again"
				type="password"
				autoComplete="new-password"
				value={form.again ?? ''}
				set={(value) => put('again', value)}
				error={wrong.again}
			/>
		</Sheet>
	)
}
export function Setup({ done }: { done: () => void }) {
	const setting = useSetup()
	if (setting.recoveryKey)
		return (
			<RecoveryKey
				recoveryKey={setting.recoveryKey}
				clinicName={typedIn(setting.form, 'name')}
				done={done}
			/>
		)
	return (
		<Stack
			component="form"
			noValidate
			spacing={3}
			sx={{ maxWidth: 860, mx: 'auto' }}
			onSubmit={(event) => {
				event.preventDefault()
				void setting.setUp()
			}}
		>
			<Box>
				<Typography variant="h1">Set up the clinic</Typography>
				<Typography color="textSecondary" sx={{ mt: 0.5 }}>
					Once, on this PC. Everything stays on it, sealed with your passphrase.
				</Typography>
			</Box>
			<LetterheadSheet of={setting} />
			<Sheet title="Signing clinician" hint="Stands under every signed report.">
				<ClinicField of={setting} path="clinician.name" />
				<ClinicField of={setting} path="clinician.registration" />
			</Sheet>
			<PassphraseSheet of={setting} />
			<Trouble says={setting.says} />
			<Box>
				<Button type="submit" variant="contained" size="large" disabled={setting.busy}>
					Set up
				</Button>
				{setting.busy && (
					<Typography component="span" role="status" color="textSecondary" sx={{ ml: 2 }}>
						Sealing the records.
					</Typography>
				)}
			</Box>
		</Stack>
	)
}
