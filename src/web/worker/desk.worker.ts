import './schemasWithoutEval.ts';
import { type Port, serveCalls } from '../../jobs/protocol.ts';
import { ShootDesk } from '../../jobs/ShootDesk.ts';

serveCalls(globalThis as unknown as Port, new ShootDesk());
