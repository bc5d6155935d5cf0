/* A change that was killed: afterwards, whatever the moment, all files are old or all are new, and nothing of
 * it is left. */
#include <errno.h>
#include <fcntl.h>
#include <ftw.h>
#include <setjmp.h>
#include <signal.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include <cmocka.h>
#include <sanitizer/lsan_interface.h>

#include "stavewright/source.h"

#define COPY ".stavewright-unfinished"

/* ---- system calls ----------------------------------------------------------------------------------------
 */

/* No test takes the power away, and waiting for the disk is most of the time that a change takes. */
static int no_fsync(int fd)
{
    (void)fd;
    return 0;
}

static int plain_open(const char *path, int flags, unsigned mode)
{
    return open(path, flags, (mode_t)mode);
}

static int plain_fchown(int fd, unsigned owner, unsigned group)
{
    return fchown(fd, (uid_t)owner, (gid_t)group);
}

static int plain_fchmod(int fd, unsigned mode)
{
    return fchmod(fd, (mode_t)mode);
}

static const sw_system plain_system = {
    .open = plain_open,
    .read = read,
    .write = write,
    .fchown = plain_fchown,
    .fchmod = plain_fchmod,
    .fsync = no_fsync,
    .flock = flock,
    .close = close,
    .link = link,
    .rename = rename,
    .unlink = unlink,
};

/* ---- system calls before and after which the program is killed ----------------------------------------- */

static int moment;     /* so far */
static int killed_at;  /* 0: never */
static bool by_signal; /* really killed, in a child; else none of its code is run any more, which is faster */
static sigjmp_buf end_of_life;
static bool is_open[1024];
static bool without_links;

static void pass_moment(void)
{
    if (++moment == killed_at && by_signal) {
        raise(SIGKILL);
    } else if (moment == killed_at) {
        siglongjmp(end_of_life, 1);
    }
}

static int mortal_open(const char *path, int flags, unsigned mode)
{
    pass_moment();
    int fd = open(path, flags, (mode_t)mode);
    if (fd >= 0 && fd < (int)(sizeof is_open / sizeof is_open[0])) {
        is_open[fd] = true;
    }
    pass_moment();
    return fd;
}

static long mortal_read(int fd, void *bytes, size_t count)
{
    return read(fd, bytes, count); /* changes nothing */
}

/* Short, so that a text can be torn. */
static long mortal_write(int fd, const void *bytes, size_t count)
{
    pass_moment();
    long done = write(fd, bytes, count > 400 ? 400 : count);
    pass_moment();
    return done;
}

static int mortal_fchown(int fd, unsigned owner, unsigned group)
{
    pass_moment();
    return fchown(fd, (uid_t)owner, (gid_t)group);
}

static int mortal_fchmod(int fd, unsigned mode)
{
    pass_moment();
    return fchmod(fd, (mode_t)mode);
}

static int mortal_fsync(int fd)
{
    pass_moment();
    return no_fsync(fd);
}

static int mortal_flock(int fd, int operation)
{
    pass_moment();
    int result = flock(fd, operation);
    pass_moment();
    return result;
}

static int mortal_close(int fd)
{
    is_open[fd] = false;
    return close(fd);
}

static int mortal_link(const char *from, const char *to)
{
    if (without_links) {
        errno = EPERM;
        return -1;
    }
    pass_moment();
    int result = link(from, to);
    pass_moment();
    return result;
}

static int mortal_rename(const char *from, const char *to)
{
    pass_moment();
    int result = rename(from, to);
    pass_moment();
    return result;
}

static int mortal_unlink(const char *path)
{
    pass_moment();
    int result = unlink(path);
    pass_moment();
    return result;
}

static const sw_system mortal_system = {
    .open = mortal_open,
    .read = mortal_read,
    .write = mortal_write,
    .fchown = mortal_fchown,
    .fchmod = mortal_fchmod,
    .fsync = mortal_fsync,
    .flock = mortal_flock,
    .close = mortal_close,
    .link = mortal_link,
    .rename = mortal_rename,
    .unlink = mortal_unlink,
};

/* ---- files --------------------------------------------------------------------------------------------- */

enum { FILES = 5, FOLDERS = 3 };
static const char *const folders[FOLDERS] = {"film", "film/brass", "other films/1m1"};
/* Odd names are no excuse; two are reached through symbolic links. */
static const char *const plain_names[FILES] = {"a.ly", "two\nlines 100%.ly", "c.ly", "-d \xC3\xA9.ly",
                                               "new.ly"};

static char home[256];
static int file_count;
static int folder_count;

static int make_home(void **state)
{
    (void)state;
    const char *parent =
        access("/dev/shm", W_OK) == 0 ? "/dev/shm" : getenv("TMPDIR"); /* thousands of syncs */
    char path[200];
    snprintf(path, sizeof path, "%s/recovery-test-XXXXXX", parent == NULL ? "/tmp" : parent);
    if (mkdtemp(path) == NULL || realpath(path, home) == NULL) {
        return -1;
    }
    return chdir(home);
}

static int remove_entry(const char *path, const struct stat *status, int kind, struct FTW *position)
{
    (void)status;
    (void)kind;
    return position->level == 0 ? 0 : remove(path);
}

static void empty_home(void)
{
    assert_int_equal(chdir(home), 0);
    assert_int_equal(nftw(".", remove_entry, 16, FTW_DEPTH | FTW_PHYS), 0);
}

static int remove_home(void **state)
{
    (void)state;
    empty_home();
    return chdir("/") != 0 || rmdir(home) != 0 ? -1 : 0;
}

static void put_file(const char *name, const char *bytes)
{
    FILE *file = fopen(name, "wb");
    assert_non_null(file);
    assert_true(fputs(bytes, file) >= 0);
    assert_int_equal(fclose(file), 0);
}

/* NULL when there is none; valid until the next call. */
static const char *get_file(const char *name)
{
    static char bytes[5000];
    FILE *file = fopen(name, "rb");
    if (file == NULL) {
        return NULL;
    }
    bytes[fread(bytes, 1, sizeof bytes - 1, file)] = '\0';
    fclose(file);
    return bytes;
}

static bool holds(const char *name, const char *bytes)
{
    const char *found = get_file(name);
    return bytes == NULL ? found == NULL : found != NULL && strcmp(found, bytes) == 0;
}

static const char *path_of(int file)
{
    static char path[4][300];
    static int turn;
    turn = (turn + 1) % 4;
    snprintf(path[turn], sizeof path[turn], "%s/%s", folders[file % folder_count], plain_names[file]);
    return path[turn];
}

/* The last of five files is to be created. */
static const char *old_bytes(int file)
{
    static const char *const bytes[FILES] = {"{ c4 }\n", "{ d4 }\r\n", "", "\t{ e }", NULL};
    return bytes[file];
}

static const char *new_bytes(int file)
{
    static char bytes[FILES][1200];
    memset(bytes[file], 'a' + file, sizeof bytes[file] - 1);
    return bytes[file];
}

static void set_up(int files, int in_folders)
{
    sw_system_use(&plain_system);
    empty_home();
    file_count = files;
    folder_count = in_folders;
    assert_int_equal(mkdir("film", 0777), 0);
    assert_int_equal(mkdir("film/brass", 0777), 0);
    assert_int_equal(mkdir("other films", 0777), 0);
    assert_int_equal(mkdir("other films/1m1", 0777), 0);
    for (int i = 0; i < files; i++) {
        if (old_bytes(i) != NULL) {
            put_file(path_of(i), old_bytes(i));
            assert_int_equal(chmod(path_of(i), i == 1 ? 0640 : 0755), 0);
        }
    }
}

typedef struct look_result {
    int old;
    int new;
    int other;
} look_result;

static look_result look(void)
{
    look_result r = {0};
    for (int i = 0; i < file_count; i++) {
        *(holds(path_of(i), old_bytes(i))   ? &r.old
          : holds(path_of(i), new_bytes(i)) ? &r.new
                                            : &r.other) += 1;
    }
    return r;
}

static int left;

static int count_left(const char *path, const struct stat *status, int kind, struct FTW *position)
{
    (void)status;
    (void)kind;
    (void)position;
    left += strstr(path, ".stavewright-") != NULL ? 1 : 0;
    return 0;
}

static int leftovers(void)
{
    left = 0;
    assert_int_equal(nftw(".", count_left, 16, FTW_PHYS), 0);
    return left;
}

/* ---- the change, its death, and the next command ------------------------------------------------------- */

/* Reads all files; *error is NULL after success. */
static bool write_change(char **error)
{
    sw_text *texts[FILES];
    sw_write writes[FILES];
    for (int i = 0; i < file_count; i++) {
        const char *path = path_of(i);
        texts[i] = old_bytes(i) == NULL ? sw_text_new(path) : sw_text_read(path, error);
        assert_non_null(texts[i]);
        writes[i] = (sw_write){texts[i], sw_slice_of(new_bytes(i))};
    }
    bool good = sw_write_all(writes, (size_t)file_count, error);
    for (int i = 0; i < file_count; i++) {
        sw_text_free(texts[i]);
    }
    return good;
}

static char told[4000];

static void listen(void *context, const char *sentence)
{
    (void)context;
    strncat(told, sentence, sizeof told - strlen(told) - 2);
    strcat(told, "\n");
}

static void read_one(int file)
{
    char *error = NULL;
    told[0] = '\0';
    sw_recovery_use(listen, NULL);
    sw_text_free(sw_text_read(path_of(file), &error));
    sw_recovery_use(NULL, NULL);
    free(error);
}

static void write_all_files(int unused)
{
    (void)unused;
    char *error = NULL;
    write_change(&error);
    free(error);
}

static bool dies_by_signal(void (*work)(int), int argument)
{
    fflush(stdout);
    pid_t child = fork();
    assert_true(child >= 0);
    if (child == 0) {
        work(argument);
        _exit(0);
    }
    int status;
    assert_int_equal(waitpid(child, &status, 0), child);
    if (WIFEXITED(status)) {
        assert_int_equal(WEXITSTATUS(status), 0);
        return false;
    }
    assert_int_equal(WTERMSIG(status), SIGKILL);
    return true;
}

/* As the system does when a program dies: its memory is lost, its files are closed, which unlocks them. */
static bool dies_by_jump(void (*work)(int), int argument)
{
    volatile bool died = true;
    __lsan_disable();
    if (sigsetjmp(end_of_life, 1) == 0) {
        work(argument);
        died = false;
    }
    __lsan_enable();
    for (int fd = 0; fd < (int)(sizeof is_open / sizeof is_open[0]); fd++) {
        if (is_open[fd]) {
            close(fd);
            is_open[fd] = false;
        }
    }
    return died;
}

/* Does something that dies at the n-th moment; false when it came to its end before. */
static bool dies(int n, void (*work)(int), int argument)
{
    moment = 0;
    killed_at = n;
    sw_system_use(&mortal_system);
    bool died = by_signal ? dies_by_signal(work, argument) : dies_by_jump(work, argument);
    killed_at = 0;
    sw_system_use(&plain_system);
    sw_recovery_use(NULL, NULL);
    return died;
}

static void check_settled(int n, const char *where)
{
    look_result r = look();
    if ((r.old != file_count && r.new != file_count) || leftovers() > 0) {
        fail_msg("%s %d: then %d old, %d new, %d other, %d files left; %s", where, n, r.old, r.new, r.other,
                 leftovers(), told);
    }
    for (int i = 0; i < file_count && old_bytes(i) != NULL; i++) {
        struct stat status;
        assert_int_equal(stat(path_of(i), &status), 0);
        assert_int_equal(status.st_mode & 07777, i == 1 ? 0640 : 0755);
        assert_int_equal(status.st_nlink, 1);
    }
}

static void kill_everywhere(int files, int in_folders)
{
    int mixed = 0;
    int back = 0;
    int kept = 0;
    int n = 1;
    for (;; n++) {
        set_up(files, in_folders);
        bool died = dies(n, write_all_files, 0);
        look_result r = look();
        assert_int_equal(r.other, 0); /* each file is whole */
        mixed += r.old > 0 && r.new > 0 ? 1 : 0;
        int before = leftovers();
        /* Whichever file is read first, all are settled; a second reading has nothing to say. */
        read_one(n % files);
        assert_true(told[0] == '\0' || leftovers() < before);
        /* Only of a change that had not begun nothing is said. */
        assert_true(told[0] != '\0' || leftovers() == before || r.old == files);
        if (before > 0 && leftovers() > 0) { /* this folder had no copy yet, or no longer */
            for (int i = 0; i < files; i++) {
                read_one(i);
            }
        }
        check_settled(n, "killed at moment");
        look_result after = look();
        if (r.new == files) {
            assert_int_equal(after.new, files); /* what was complete stays */
        } else {
            assert_int_equal(after.old, files);
        }
        *(after.old == files ? &back : &kept) += 1;
        read_one(0);
        assert_string_equal(told, "");
        if (!died) {
            break;
        }
    }
    printf(
        "%d files in %d folders, killed at %d moments: %d times a mix, then %d times all old, %d all new\n",
        files, in_folders, n - 1, mixed, back, kept);
    assert_true(back > 10 && kept > 3 && (files == 1 || mixed >= files - 1));
}

static void a_killed_change_is_settled(void **state)
{
    (void)state;
    for (int files = 1; files <= FILES; files++) {
        for (int in_folders = 1; in_folders <= FOLDERS && in_folders <= files; in_folders++) {
            kill_everywhere(files, in_folders);
        }
    }
}

static void a_signal_kills_just_so(void **state)
{
    (void)state;
    by_signal = true;
    kill_everywhere(3, 2);
    by_signal = false;
}

static void a_killed_change_is_settled_without_hard_links(void **state)
{
    (void)state;
    without_links = true;
    kill_everywhere(FILES, FOLDERS);
    without_links = false;
}

/* Leaves the files as a kill does, with exactly `new` of them new: at the first moment where it is so, which
 * is looked for once. */
static void leave_mix(int files, int in_folders, int new)
{
    static int moments[FILES + 1][FOLDERS + 1][FILES + 1];
    int *n = &moments[files][in_folders][new];
    for (*n += *n == 0 ? 1 : 0;; ++*n) {
        set_up(files, in_folders);
        assert_true(dies(*n, write_all_files, 0));
        if (look().new == new &&leftovers() > 0) {
            return;
        }
    }
}

static void a_killed_recovery_is_taken_up_again(void **state)
{
    (void)state;
    int moments = 0;
    for (int new = 1; new <= FILES; new ++) {
        for (int m = 1;; m++) {
            leave_mix(FILES, FOLDERS, new);
            bool died = dies(m, read_one, m % FILES);
            for (int i = 0; i < FILES; i++) {
                read_one(i);
            }
            check_settled(m, "recovery killed at moment");
            assert_int_equal(new == FILES ? look().new : look().old, FILES);
            if (!died) {
                break;
            }
            moments++;
        }
    }
    printf("a recovery was killed at %d moments\n", moments);
    assert_true(moments > 100);
}

static void the_next_write_settles_too(void **state)
{
    (void)state;
    leave_mix(4, 3, 2);
    char *error = NULL;
    assert_false(write_change(&error)); /* it had read the mix */
    assert_non_null(strstr(error, "not written, try again: a change of "));
    free(error);
    error = NULL;
    check_settled(0, "after a write");
    assert_int_equal(look().old, 4);
    assert_true(write_change(&error));
    assert_int_equal(look().new, 4);
    assert_int_equal(leftovers(), 0);
}

/* A copy that was cut short, or whose writer was just about to lock it, is in nobody's way. */
static void a_change_that_had_not_begun_stops_nobody(void **state)
{
    (void)state;
    static const char *const texts[] = {"", "stavewr", "stavewright journal 1\nid 12\nfolder .\n"};
    for (size_t i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        set_up(3, 2);
        put_file("film/brass/" COPY, texts[i]);
        read_one(1);
        assert_string_equal(told, "");
        assert_int_equal(leftovers(), 0);
        put_file("film/brass/" COPY, texts[i]);
        char *error = NULL;
        assert_true(write_change(&error));
        assert_int_equal(look().new, 3);
        assert_int_equal(leftovers(), 0);
    }
}

/* Nobody who has not asked for it finds files changed by reading. */
static void reading_alone_changes_nothing(void **state)
{
    (void)state;
    leave_mix(4, 3, 2);
    int before = leftovers();
    char *error = NULL;
    sw_text_free(sw_text_read(path_of(0), &error));
    assert_int_equal(look().new, 2);
    assert_int_equal(leftovers(), before);
}

/* ---- what somebody changed meanwhile ------------------------------------------------------------------- */

static void a_file_changed_before_its_turn_is_kept(void **state)
{
    (void)state;
    leave_mix(3, 2, 1);
    put_file(path_of(2), "{ mine }\n");
    read_one(1);
    assert_non_null(strstr(told, "put back"));
    assert_true(holds(path_of(0), old_bytes(0)));
    assert_true(holds(path_of(2), "{ mine }\n"));
    assert_int_equal(leftovers(), 0);
}

static void a_moved_file_changed_since_stops_the_recovery(void **state)
{
    (void)state;
    leave_mix(3, 2, 1);
    put_file(path_of(0), "{ mine }\n");
    int before = leftovers();
    for (int i = 0; i < 3; i++) { /* each command says so again */
        read_one(i);
        assert_non_null(strstr(told, "was changed since; all is left as it is"));
        assert_non_null(strstr(told, path_of(0)));
    }
    assert_true(holds(path_of(0), "{ mine }\n"));
    assert_int_equal(look().old, 2);
    assert_int_equal(leftovers(), before);
    char *error = NULL;
    assert_false(write_change(&error));
    assert_non_null(strstr(error, "cannot be written while this is unsettled"));
    free(error);
}

static void a_complete_change_may_be_worked_on(void **state)
{
    (void)state;
    leave_mix(3, 2, 3);
    put_file(path_of(1), "{ mine }\n");
    read_one(0);
    assert_non_null(strstr(told, "it was complete"));
    assert_int_equal(look().new, 2);
    assert_true(holds(path_of(1), "{ mine }\n"));
    assert_int_equal(leftovers(), 0);
}

static void a_removed_file_is_not_brought_back_wrongly(void **state)
{
    (void)state;
    leave_mix(3, 2, 1);
    assert_int_equal(unlink(path_of(2)), 0); /* not moved yet */
    read_one(0);
    assert_true(holds(path_of(0), old_bytes(0)));
    assert_true(holds(path_of(2), NULL));
    assert_int_equal(leftovers(), 0);
}

static void a_lost_original_stops_the_recovery(void **state)
{
    (void)state;
    leave_mix(3, 1, 1);
    assert_int_equal(system("rm film/.a.ly.*.old"), 0);
    read_one(0);
    assert_non_null(strstr(told, "its original is gone"));
    assert_int_equal(look().new, 1);
}

/* ---- whose is it --------------------------------------------------------------------------------------- */

static void a_moved_film_is_settled_where_it_is(void **state)
{
    (void)state;
    leave_mix(4, 2, 2);
    assert_int_equal(system("cp -a film copy && mv film elsewhere && mv copy film"), 0);
    read_one(1);
    assert_int_equal(look().old, 4);
    assert_int_equal(system("test $(ls -A film film/brass | grep -c stavewright-) = 0"), 0);
    /* The other one is as the kill has left it. */
    assert_true(holds("elsewhere/a.ly", new_bytes(0)));
    assert_true(holds("elsewhere/" COPY, NULL) == false);
}

static void a_missing_copy_stops_the_recovery(void **state)
{
    (void)state;
    leave_mix(4, 2, 2);
    assert_int_equal(unlink("film/brass/" COPY), 0);
    read_one(0);
    assert_non_null(strstr(told, "moved or its journal"));
    assert_int_equal(look().new, 2);
    read_one(1);
    assert_string_equal(told, "");
}

static void a_strange_text_is_left_alone(void **state)
{
    (void)state;
    static const char *const texts[] = {
        "to do: trumpets\n",
        "stavewright journal 1\nid 12\nfolder .\nfile 0 none none ../b.ly\nlisted\nready\n",
        "stavewright journal 1\nid 12\nfolder /\nfile 0 none none b.ly\nlisted\nready\n",
        "stavewright journal 1\nid 12\nfolder .\nfile 7 none none b.ly\nlisted\nready\n",
        "stavewright journal 1\nid 12\nfolder .\nfile 0 none none ..\nlisted\nready\n",
        "stavewright journal 1\nid x\nlisted\n",
        "stavewright journal 1\nid 12\nlisted\nready\n",
    };
    for (size_t i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        set_up(1, 1);
        put_file("film/" COPY, texts[i]);
        read_one(0);
        if (strstr(told, "is no journal of stavewright") == NULL || !holds("film/" COPY, texts[i])) {
            fail_msg("'%s' gives '%s'", texts[i], told);
        }
    }
    set_up(1, 1);
    assert_int_equal(symlink("a.ly", "film/" COPY), 0);
    read_one(0);
    assert_true(told[0] != '\0');
    assert_int_equal(look().old, 1);
}

/* A journal that comes with a film from elsewhere reaches no file outside it. */
static void a_forged_journal_reaches_nothing(void **state)
{
    (void)state;
    set_up(1, 1);
    put_file("profile", "x");
    /* The digest of "x": FNV-1a, 64 bits. */
    put_file("film/" COPY, "stavewright journal 1\nid 12\nfolder .\nfolder ..\n"
                           "file 1 none 1-af63f54c86021707 profile\nfile 0 none none b.ly\nlisted\nready\n");
    read_one(0);
    assert_true(holds("profile", "x"));
}

static void a_running_change_is_left_alone(void **state)
{
    (void)state;
    leave_mix(3, 2, 1);
    int fd = open("film/brass/" COPY, O_RDWR);
    assert_true(fd >= 0 && flock(fd, LOCK_EX | LOCK_NB) == 0);
    int before = leftovers();
    read_one(0);
    assert_non_null(strstr(told, "another stavewright is writing here"));
    assert_int_equal(look().new, 1);
    assert_int_equal(leftovers(), before);
    close(fd);
    read_one(0);
    check_settled(0, "when it has ended");
}

static void another_users_change_is_left_alone(void **state)
{
    (void)state;
    if (geteuid() != 0) {
        print_message("only the superuser can give files away\n");
        skip();
    }
    leave_mix(3, 1, 1);
    assert_int_equal(chown("film/" COPY, 1234, 1234), 0);
    assert_int_equal(chmod(home, 0755), 0);
    static const unsigned readers[] = {0, 4321}; /* who may open it, and who may not */
    for (int i = 0; i < 2; i++) {
        assert_int_equal(seteuid(readers[i]), 0);
        read_one(0);
        assert_int_equal(seteuid(0), 0);
        assert_non_null(strstr(told, "another user"));
        assert_int_equal(look().new, 1);
    }
}

/* ---- several at the same time -------------------------------------------------------------------------- */

enum { WRITERS = 6, ROUNDS = 15 };

/* Each writer changes two files of its own, and, as everybody, a common one. */
static void write_often(int writer)
{
    unsigned common_done = 0;
    for (int round = 0; round < ROUNDS; round++) {
        char name[2][40];
        char bytes[40];
        sw_text *texts[3];
        sw_write writes[3];
        snprintf(bytes, sizeof bytes, "%d-%d", writer, round);
        for (int i = 0; i < 3; i++) {
            char *error = NULL;
            if (i < 2) {
                snprintf(name[i], sizeof name[i], "%s/w%d.ly", folders[i], writer);
            }
            texts[i] = sw_text_read(i < 2 ? name[i] : "film/common.ly", &error);
            if (texts[i] == NULL) {
                _exit(3);
            }
            writes[i] = (sw_write){texts[i], sw_slice_of(bytes)};
        }
        char *error = NULL;
        bool good = sw_write_all(writes, 3, &error);
        if (!good && strstr(error, "changed by somebody else") == NULL) {
            fprintf(stderr, "writer %d: %s\n", writer, error);
            _exit(4);
        }
        for (int i = 0; i < 2; i++) { /* all or nothing */
            if (holds(name[i], bytes) != good) {
                _exit(5);
            }
        }
        common_done += good ? 1 : 0;
        free(error);
        for (int i = 0; i < 3; i++) {
            sw_text_free(texts[i]);
        }
    }
    _exit(common_done > 0 ? 0 : 1);
}

static void writers_wait_for_each_other(void **state)
{
    (void)state;
    set_up(1, 1);
    put_file("film/common.ly", "");
    pid_t children[WRITERS];
    for (int w = 0; w < WRITERS; w++) {
        char name[40];
        for (int i = 0; i < 2; i++) {
            snprintf(name, sizeof name, "%s/w%d.ly", folders[i], w);
            put_file(name, "start");
        }
    }
    fflush(stdout);
    for (int w = 0; w < WRITERS; w++) {
        children[w] = fork();
        assert_true(children[w] >= 0);
        if (children[w] == 0) {
            write_often(w);
        }
    }
    int successful = 0;
    for (int w = 0; w < WRITERS; w++) {
        int status;
        assert_int_equal(waitpid(children[w], &status, 0), children[w]);
        assert_true(WIFEXITED(status) && WEXITSTATUS(status) <= 1);
        successful += WEXITSTATUS(status) == 0 ? 1 : 0;
    }
    printf("%d of %d writers got at least one of %d changes through\n", successful, WRITERS, ROUNDS);
    assert_true(successful > 0);
    assert_int_equal(leftovers(), 0);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_killed_change_is_settled),
        cmocka_unit_test(a_signal_kills_just_so),
        cmocka_unit_test(a_killed_change_is_settled_without_hard_links),
        cmocka_unit_test(a_killed_recovery_is_taken_up_again),
        cmocka_unit_test(the_next_write_settles_too),
        cmocka_unit_test(a_change_that_had_not_begun_stops_nobody),
        cmocka_unit_test(reading_alone_changes_nothing),
        cmocka_unit_test(a_file_changed_before_its_turn_is_kept),
        cmocka_unit_test(a_moved_file_changed_since_stops_the_recovery),
        cmocka_unit_test(a_complete_change_may_be_worked_on),
        cmocka_unit_test(a_removed_file_is_not_brought_back_wrongly),
        cmocka_unit_test(a_lost_original_stops_the_recovery),
        cmocka_unit_test(a_moved_film_is_settled_where_it_is),
        cmocka_unit_test(a_missing_copy_stops_the_recovery),
        cmocka_unit_test(a_strange_text_is_left_alone),
        cmocka_unit_test(a_forged_journal_reaches_nothing),
        cmocka_unit_test(a_running_change_is_left_alone),
        cmocka_unit_test(another_users_change_is_left_alone),
        cmocka_unit_test(writers_wait_for_each_other),
    };
    return cmocka_run_group_tests(tests, make_home, remove_home);
}
