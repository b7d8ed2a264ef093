/** My passphrase and PIN, and the recovery key of the owner. */
import { useState } from 'react'
import { Outcome } from '../../parts/form.tsx'
import { RecoveryKey } from '../../parts/RecoveryKey.tsx'
import { change, useHostAction } from '../../query.ts'
import { IssueRecoveryKey } from './IssueRecoveryKey.tsx'
import { OwnPassphrase, OwnPin } from './OwnSecrets.tsx'

export function MyAccess({ owner, clinicName }: { owner: boolean; clinicName: string }) {
	const action = useHostAction()
	const [recoveryKey, setRecoveryKey] = useState('')
	if (recoveryKey)
		return (
			<RecoveryKey
				recoveryKey={recoveryKey}
				clinicName={clinicName}
				confirm={(groups) => change('session.confirmRecoveryKey', { groups })}
				done={() => setRecoveryKey('')}
			/>
		)
	return (
		<>
			<Outcome of={action} />
			<OwnPassphrase action={action} />
			<OwnPin action={action} />
			{owner && <IssueRecoveryKey action={action} issued={setRecoveryKey} />}
		</>
	)
}
