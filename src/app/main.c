#include <malloc.h>

#include "app/app.h"

int main(int count, char **arguments)
{
#ifdef M_MMAP_THRESHOLD
    /* A film is read file by file: what one of them needed is for the next. Given back to the system in
     * between, and asked for again, it takes a twentieth of a check. */
    mallopt(M_MMAP_THRESHOLD, 1 << 30);
    mallopt(M_TRIM_THRESHOLD, 1 << 30);
#endif
    return sw_app(count, arguments);
}
