// The list of jobs. What a job is stands in its entries, which every device folds for itself.
import type { Api } from '../app/createApp.ts'
import type { Parts } from '../app/parts.ts'
import { JobShelf } from '../jobs/jobShelf.ts'

export async function jobRoutes(app: Api, { journal }: Parts): Promise<void> {
  const shelf = new JobShelf(journal)
  app.get('/api/jobs', { schema: { summary: 'The jobs, the latest touched first.' } }, async () => ({
    jobs: await shelf.jobs(),
  }))
}
