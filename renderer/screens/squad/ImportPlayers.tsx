/** Players put on record from a list, such as a club's or another program's, without a screening day. */
import { Page } from '../../parts/Page.tsx'
import { NewPlayers } from './Roster.tsx'

export const ImportPlayers = () => (
	<Page
		title="Import players"
		line="A list of players is put on record. Who may be on record already is asked; nobody is changed."
	>
		<NewPlayers />
	</Page>
)
