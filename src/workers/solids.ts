/**
 * The worker that makes solids. It is a file of its own so that it alone may do what the kernel's bindings do when they start, put
 * together functions from text (scripts/policy.mjs).
 */
import { listen } from './listen.ts';

listen();
