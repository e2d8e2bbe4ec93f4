import type { StopSignal } from './exit-codes.ts'
import type { Io } from './io.ts'

/** Whether a signal has asked the work to stop; looked at between two files. */
export interface StopRequest {
  readonly asked: StopSignal | undefined
}

/** Does `work` with signals held back: they are noted in the request that it is given, and end nothing by themselves. */
export async function withStopRequest<T>(io: Pick<Io, 'onStop'>, work: (stop: StopRequest) => Promise<T>): Promise<T> {
  const request: { asked: StopSignal | undefined } = { asked: undefined }
  const release = io.onStop((signal) => {
    request.asked ??= signal
  })
  try {
    return await work(request)
  } finally {
    release()
  }
}
