/** What must be filled in for an act on a signed visit. */
import { Field } from '../../parts/form.tsx'
import { type Act, channels, lateKinds, type Typed } from './visitActs.ts'

interface ActFieldsProps {
	act: Act
	typed: Typed
	put: (name: keyof Typed, value: string) => void
}
export function ActFields({ act, typed, put }: ActFieldsProps) {
	const of = (name: keyof Typed) => ({
		value: typed[name],
		set: (value: string) => put(name, value),
	})
	switch (act) {
		case 'amend':
			return (
				<Field
					label="Reason for the amendment"
					{...of('reason')}
					focus
					hint="A draft opens. When it is signed it becomes the next version; this one stays."
				/>
			)
		case 'late':
			return (
				<>
					<Field label="Kind" {...of('what')} options={Object.values(lateKinds)} />
					<Field label="It happened on" type="date" {...of('occurredOn')} />
					<Field label="What happened" {...of('text')} rows={3} />
				</>
			)
		case 'handed':
			return (
				<>
					<Field
						label="Recipient"
						{...of('recipient')}
						focus
						hint="Whom to tell if this visit is amended later."
					/>
					<Field label="Way" {...of('channel')} options={channels} />
				</>
			)
		case 'error':
			return (
				<Field
					label="Reason why it was entered in error"
					{...of('reason')}
					focus
					hint="This cannot be taken back. The visit stays in the history."
				/>
			)
		case 'countersign':
			return <Field label="Words beside the countersignature" {...of('text')} optional focus />
	}
}
