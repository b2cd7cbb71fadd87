import { spawnSync, type SpawnSyncOptions } from 'node:child_process'

/** The nginx of this machine, if there is one. NGINX_PATH names another. */
export const nginxPath = (): string | undefined => [process.env.NGINX_PATH, 'nginx', '/usr/sbin/nginx'].find((program) => program !== undefined && spawnSync(program, ['-v']).status === 0)

/** Installs one where this machine lets us, which is where we are root on a system with apt-get. Where it cannot be had, its tests say that they did not run. */
export function installNginx(): void {
  if (process.getuid?.() !== 0 || spawnSync('apt-get', ['--version']).status !== 0) return
  const quietly: SpawnSyncOptions = { stdio: ['ignore', 'ignore', 'inherit'] }
  spawnSync('apt-get', ['update', '-qq'], quietly)
  spawnSync('apt-get', ['install', '-y', '-qq', '--no-install-recommends', 'nginx-light'], { ...quietly, env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive', RUNLEVEL: '1' } }) // run level 1: installed, not started
}
