import pg from 'pg';
import type { Database, Row, Run } from './database.ts';

/** A database that several servers share. */
export async function openPostgres(address: string): Promise<Database> {
  const pool = new pg.Pool({ connectionString: address, max: 8, connectionTimeoutMillis: 5000 });
  // A connection at rest that breaks; the next transaction takes another one.
  pool.on('error', () => {});
  return {
    async transaction(work) {
      const client = await pool.connect();
      const run: Run = async (sql, ...values) => {
        let n = 0;
        const bound = values.map((value) => (value instanceof Uint8Array ? Buffer.from(value) : value));
        return (
          await client.query<Row>(
            sql.replace(/\?/g, () => `$${++n}`),
            bound,
          )
        ).rows;
      };
      let broken: Error | undefined;
      try {
        await client.query('BEGIN');
        const result = await work(run);
        await client.query('COMMIT');
        return result;
      } catch (error) {
        await client.query('ROLLBACK').catch((failed: Error) => {
          broken = failed;
        });
        throw error;
      } finally {
        client.release(broken);
      }
    },
    words: { counted: 'BIGSERIAL PRIMARY KEY', bytes: 'BYTEA', whole: 'BIGINT' },
    forUpdate: ' FOR UPDATE',
    // Class 53 of the SQLSTATE codes: insufficient resources; 53100 is a full disk.
    isFull: (error) => error instanceof Error && 'code' in error && error.code === '53100',
    close: () => pool.end(),
  };
}
