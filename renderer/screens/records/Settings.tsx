/** Settings of the records: idle lock, age of a backup, retention rule, local ages. */
import { Alert, Box, Button } from '@mui/material'
import { useEffect, useState } from 'react'
import { retentionRules } from '../../../shared/desk/records/retention.ts'
import { type RecordSettings, recordSettingsSchema } from '../../../shared/desk/records/settings.ts'
import { call } from '../../host.ts'
import { Field, Sheet, Trouble } from '../../parts/form.tsx'
import { useAction, useAnswer } from '../../parts/panels.tsx'

const fields = [
	['idleMinutes', 'Lock after minutes without a touch'],
	['backupWarnDays', 'Warn when the backup is older than days'],
	['retention.adultYears', 'Keep years after the last entry'],
	['retention.minorUntilAgeYears', "Keep a minor's record until age"],
	['retention.seventeenUntilAgeYears', 'Keep until age, where 17 at the last entry'],
	['retention.adultAgeYears', 'Adult for retention from age'],
	['ages.adultYears', 'Guardian consents end at age'],
	['ages.ownConsentYears', 'Own consent without a note from age'],
] as const
const get = (settings: RecordSettings, path: string): string =>
	String(
		path
			.split('.')
			.reduce<unknown>((value, key) => (value as Record<string, unknown>)[key], settings),
	)
export function RecordsSettings() {
	const { value, says } = useAnswer('recordSettings.get', {})
	const [form, setForm] = useState<Record<string, string>>({})
	const [source, setSource] = useState({ name: '', source: '' })
	const action = useAction()
	useEffect(() => {
		if (!value) return
		setForm(Object.fromEntries(fields.map(([path]) => [path, get(value, path)])))
		setSource({ name: value.retention.name, source: value.retention.source })
	}, [value])
	const start = (name: string) => {
		const rule = Object.values(retentionRules).find((one) => one.name === name)
		if (!rule) return
		setSource({ name: rule.name, source: rule.source })
		setForm((now) => ({
			...now,
			'retention.adultYears': String(rule.adultYears),
			'retention.minorUntilAgeYears': String(rule.minorUntilAgeYears),
			'retention.seventeenUntilAgeYears': String(rule.seventeenUntilAgeYears),
			'retention.adultAgeYears': String(rule.adultAgeYears),
		}))
	}
	const save = async () => {
		const number = (path: string) => Number(form[path])
		const read = recordSettingsSchema.safeParse({
			idleMinutes: number('idleMinutes'),
			backupWarnDays: number('backupWarnDays'),
			retention: {
				...source,
				adultYears: number('retention.adultYears'),
				minorUntilAgeYears: number('retention.minorUntilAgeYears'),
				seventeenUntilAgeYears: number('retention.seventeenUntilAgeYears'),
				adultAgeYears: number('retention.adultAgeYears'),
			},
			ages: {
				adultYears: number('ages.adultYears'),
				ownConsentYears: number('ages.ownConsentYears'),
			},
		})
		if (!read.success) {
			const issue = read.error.issues[0]
			const path = issue?.path.join('.') ?? ''
			throw new Error(
				`${fields.find(([one]) => one === path)?.[1] ?? path}: ${form[path] ?? ''} cannot be ` +
					`used. ${issue?.message ?? ''}.`,
			)
		}
		await call('recordSettings.save', read.data)
		return 'Saved.'
	}
	return (
		<Box
			component="form"
			noValidate
			sx={{ display: 'grid', gap: 2 }}
			onSubmit={(event: React.FormEvent) => {
				event.preventDefault()
				action.run(save)
			}}
		>
			<Trouble says={says || action.says} />
			{action.done && (
				<Alert severity="success" role="status">
					{action.done}
				</Alert>
			)}
			<Sheet
				title="Settings of the records"
				hint="Not legal advice: local law decides how long to keep and who may consent."
			>
				<Field
					label="Start from a rule"
					value={source.name}
					set={start}
					options={Object.values(retentionRules).map((one) => one.name)}
					optional
					hint={source.source}
				/>
				<Box />
				{fields.map(([path, label]) => (
					<Field
						key={path}
						label={label}
						value={form[path] ?? ''}
						set={(text) => setForm((now) => ({ ...now, [path]: text }))}
					/>
				))}
			</Sheet>
			<Box>
				<Button type="submit" variant="contained" disabled={action.busy}>
					Save settings
				</Button>
			</Box>
		</Box>
	)
}
