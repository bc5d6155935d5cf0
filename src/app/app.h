#ifndef SW_APP_APP_H
#define SW_APP_APP_H

/* Runs the command line; returns the exit status. */
int sw_app(int count, char **arguments);

#endif
