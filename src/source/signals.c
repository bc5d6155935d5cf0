#include "source/internal.h"

/* The signals that usually end a program. SIGXFSZ comes when a limit on the size of files is reached: held
 * back, the write fails instead, and the temporary files can be removed. */
static const int ending_signals[] = {SIGINT, SIGTERM, SIGHUP, SIGQUIT, SIGXFSZ};

sw_held_signals sw_signals_hold(void)
{
    sw_held_signals signals;
    sigemptyset(&signals.held);
    pthread_sigmask(SIG_SETMASK, NULL, &signals.mask_before);
    for (size_t i = 0; i < sizeof ending_signals / sizeof ending_signals[0]; i++) {
        struct sigaction action;
        /* One that is ignored (nohup) or blocked already must not stop a write. */
        if (sigaction(ending_signals[i], NULL, &action) == 0 && action.sa_handler != SIG_IGN &&
            sigismember(&signals.mask_before, ending_signals[i]) == 0) {
            sigaddset(&signals.held, ending_signals[i]);
        }
    }
    pthread_sigmask(SIG_BLOCK, &signals.held, NULL);
    return signals;
}

bool sw_signals_pending(const sw_held_signals *signals)
{
    sigset_t pending;
    sigpending(&pending);
    for (size_t i = 0; i < sizeof ending_signals / sizeof ending_signals[0]; i++) {
        if (sigismember(&signals->held, ending_signals[i]) == 1 &&
            sigismember(&pending, ending_signals[i]) == 1) {
            return true;
        }
    }
    return false;
}

void sw_signals_release(const sw_held_signals *signals)
{
    pthread_sigmask(SIG_SETMASK, &signals->mask_before, NULL);
}
