/** First start: letterhead, clinician, passphrase; then the recovery key to keep on paper. */
import { Box, Button, Stack, Typography } from '@mui/material'
import { present } from '../../../shared/engine/plain/present.ts'
import { contrastWords } from '../../../shared/engine/report/colour.ts'
import { call } from '../../host.ts'
import { Field, Sheet, Trouble } from '../../parts/form.tsx'
import { NewPassphrase } from '../../parts/NewSecret.tsx'
import { RecoveryKey } from '../../parts/RecoveryKey.tsx'
import { mostLines, titleOf, typedIn } from './clinicForm.ts'
import { LogoFile } from './LogoFile.tsx'
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
	const { passphrase = '', again = '' } = form
	const names = ['name', 'phone', 'email', 'clinician.name', 'clinician.registration']
	return (
		<Sheet
			title="Opening the records"
			hint="Several plain words are easier to keep in mind and harder to guess than one odd word."
		>
			<NewPassphrase
				title="Passphrase"
				typed={{ once: passphrase, again }}
				put={(typed) => {
					if (typed.once !== passphrase) put('passphrase', typed.once)
					if (typed.again !== again) put('again', typed.again)
				}}
				wrong={present({ once: wrong.passphrase, again: wrong.again })}
				names={names.map((path) => typedIn(form, path))}
			/>
		</Sheet>
	)
}
/** @param made told once there are records: nothing else may be set up, and the key is shown */
export function Setup({ done, made }: { done: () => void; made: () => void }) {
	const setting = useSetup(made)
	if (setting.recoveryKey)
		return (
			<RecoveryKey
				recoveryKey={setting.recoveryKey}
				clinicName={typedIn(setting.form, 'name')}
				confirm={(groups) => call('session.confirmRecoveryKey', { groups })}
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
