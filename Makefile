# stavewright: see README.md. The settings a builder may change stand first; `make V=1` shows the commands.
CC ?= cc
CFLAGS ?= -O2 -g
CPPFLAGS ?=
LDFLAGS ?=
WERROR ?= -Werror
# The command is optimised as a whole when it is linked, which saves a twentieth of a check; the library holds plain
# objects besides. Empty for a compiler that can't, or to link faster.
LTO ?= -flto=auto -ffat-lto-objects
PREFIX ?= /usr/local
LIBDIR ?= $(PREFIX)/lib
DESTDIR ?=
BUILD ?= build
LILYPOND ?= lilypond
# The compiler with libFuzzer, and how long it looks, for make fuzz.
CLANG ?= clang
FUZZ_SECONDS ?= 1800
# Real scores with the compiler's reading of them, used by tests when they are there: see tests/reference/test_truth.py.
SCORES ?= ../shared/scores

VERSION := 0.1.0
SO_VERSION := 0
PACKAGES := tree-sitter libpcre2-8 yaml-0.1 jansson libgit2

WARNINGS := -Wall -Wextra -Wpedantic -Wshadow -Wconversion -Wmissing-prototypes -Wstrict-prototypes $(WERROR)
SANITIZE := -fsanitize=address,undefined -fno-sanitize-recover=undefined -fno-omit-frame-pointer
PACKAGE_FLAGS := $(shell pkg-config --cflags $(PACKAGES) 2>/dev/null)
LIBS := $(shell pkg-config --libs $(PACKAGES) 2>/dev/null) -lm -pthread
BASE_FLAGS = -std=c17 -pthread -fno-semantic-interposition -D_GNU_SOURCE -DSW_VERSION='"$(VERSION)"' -Iinclude -Isrc -fPIC $(PACKAGE_FLAGS) $(CPPFLAGS)
RELEASE_FLAGS = $(BASE_FLAGS) $(CFLAGS) $(LTO)
TEST_FLAGS = $(BASE_FLAGS) -Itests -Igrammar/src -g -O1 $(SANITIZE)

LIBRARY_SOURCES := $(filter-out src/app/main.c,$(sort $(wildcard src/*/*.c)))
GRAMMAR_SOURCES := grammar/src/parser.c grammar/src/scanner.c
HEADERS := $(wildcard include/stavewright/*.h)
OBJECTS := $(LIBRARY_SOURCES:.c=.o) $(GRAMMAR_SOURCES:.c=.o) $(patsubst src/players/%.yaml,generated/%.o,$(wildcard src/players/*.yaml))
RELEASE_OBJECTS := $(addprefix $(BUILD)/release/,$(OBJECTS))
TEST_OBJECTS := $(addprefix $(BUILD)/test/,$(OBJECTS))

# A test is a C program or a script; the scripts are the longer ones and start first.
TEST_SCRIPTS := $(sort $(wildcard tests/*/test_*.sh tests/*/test_*.py))
TEST_SOURCES := $(sort $(wildcard tests/*/test_*.c))
TEST_PROGRAMS := $(TEST_SOURCES:%.c=$(BUILD)/%)

ifeq ($(V),)
Q := @
say = @printf '  %-8s %s\n'
else
say = @:
endif

.DELETE_ON_ERROR:
.SECONDARY:
.PHONY: all demo test test-reference test-threads fuzz bench install clean grammar format packages FORCE
all: $(BUILD)/stavewright $(BUILD)/libstavewright.a $(BUILD)/libstavewright.so $(BUILD)/stavewright.pc $(BUILD)/stavewright.1

# ---- what is built -------------------------------------------------------------------------------------------------

# Says what is missing before the compiler does.
packages:
	@pkg-config --exists $(PACKAGES) $(if $(filter test,$(MAKECMDGOALS)),cmocka) 2>/dev/null \
	  && command -v $(firstword $(CC)) >/dev/null || { tests/install-packages.sh --only-say; exit 2; }

# A stamp holds a text and becomes newer only when the text changes: what depends on it is built again after a change
# of flags, or when a source file comes or goes.
stamp_release = $(CC) $(RELEASE_FLAGS) $(WARNINGS)
stamp_test = $(CC) $(TEST_FLAGS) $(WARNINGS)
stamp_link = $(CC) $(LDFLAGS) $(LTO) $(LIBS)
stamp_objects = $(OBJECTS)
stamp_install = $(PREFIX) $(LIBDIR) $(VERSION) $(PACKAGES)
quoted = '$(subst ','\'',$(1))'
$(BUILD)/stamps/%: FORCE
	@mkdir -p $(@D)
	@printf '%s\n' $(call quoted,$(stamp_$*)) | cmp -s - $@ || printf '%s\n' $(call quoted,$(stamp_$*)) > $@

# Data files become arrays of bytes in the library: the command needs no files beside itself.
$(BUILD)/generated/%.c: src/players/%.yaml Makefile
	$(say) EMBED $<
	@mkdir -p $(@D)
	$(Q){ printf '#include <stddef.h>\n'; \
	  printf 'extern const unsigned char sw_$*_yaml[];\nextern const size_t sw_$*_yaml_length;\n'; \
	  printf 'const unsigned char sw_$*_yaml[] = {\n'; \
	  od -An -v -tx1 $< | sed 's/ \([0-9a-f][0-9a-f]\)/0x\1,/g'; \
	  printf '0};\nconst size_t sw_$*_yaml_length = sizeof sw_$*_yaml - 1;\n'; } > $@

# The generated parser is the tree-sitter command's text, not ours: no warnings wanted for it.
$(BUILD)/release/grammar/src/parser.o $(BUILD)/test/grammar/src/parser.o: private WARNINGS := -w
# The scanner's entry points are declared in the parser alone.
$(BUILD)/release/grammar/src/scanner.o $(BUILD)/test/grammar/src/scanner.o: private WARNINGS += -Wno-missing-prototypes

$(BUILD)/release/%.o: %.c $(BUILD)/stamps/release | packages
	$(say) CC $<
	@mkdir -p $(@D)
	$(Q)$(CC) $(RELEASE_FLAGS) $(WARNINGS) -MMD -MP -c $< -o $@
$(BUILD)/test/%.o: %.c $(BUILD)/stamps/test | packages
	$(say) 'CC test' $<
	@mkdir -p $(@D)
	$(Q)$(CC) $(TEST_FLAGS) $(WARNINGS) -MMD -MP -c $< -o $@
$(BUILD)/release/generated/%.o: $(BUILD)/generated/%.c $(BUILD)/stamps/release | packages
	@mkdir -p $(@D)
	$(Q)$(CC) $(RELEASE_FLAGS) $(WARNINGS) -c $< -o $@
$(BUILD)/test/generated/%.o: $(BUILD)/generated/%.c $(BUILD)/stamps/test | packages
	@mkdir -p $(@D)
	$(Q)$(CC) $(TEST_FLAGS) $(WARNINGS) -c $< -o $@

$(BUILD)/libstavewright.a: $(RELEASE_OBJECTS) $(BUILD)/stamps/objects
	$(say) AR $@
	$(Q)rm -f $@ && $(AR) rcs $@ $(filter %.o,$^)
$(BUILD)/test/libstavewright.a: $(TEST_OBJECTS) $(BUILD)/stamps/objects
	$(say) AR $@
	$(Q)rm -f $@ && $(AR) rcs $@ $(filter %.o,$^)
# The shared library shows our own names only, not the parser's: a program may use another grammar beside ours.
$(BUILD)/libstavewright.so: $(RELEASE_OBJECTS) $(BUILD)/stamps/objects $(BUILD)/stamps/link
	$(say) LINK $@
	@echo '{ global: sw_*; local: *; };' > $@.map
	$(Q)$(CC) -fno-lto -shared -Wl,-soname,libstavewright.so.$(SO_VERSION) -Wl,--version-script=$@.map -Wl,--as-needed \
	  $(LDFLAGS) $(filter %.o,$^) -o $@ $(LIBS)
$(BUILD)/stavewright: $(BUILD)/release/src/app/main.o $(BUILD)/libstavewright.a $(BUILD)/stamps/link
	$(say) LINK $@
	$(Q)$(CC) $(LTO) -Wl,--as-needed $(LDFLAGS) $(filter %.o %.a,$^) -o $@ $(LIBS)
$(BUILD)/test/stavewright: $(BUILD)/test/src/app/main.o $(BUILD)/test/libstavewright.a $(BUILD)/stamps/link
	$(say) LINK $@
	$(Q)$(CC) $(SANITIZE) $(LDFLAGS) $(filter %.o %.a,$^) -o $@ $(LIBS)
$(BUILD)/stavewright.pc: src/stavewright.pc.in $(BUILD)/stamps/install
	@sed -e 's|@PREFIX@|$(PREFIX)|; s|@LIBDIR@|$(LIBDIR)|; s|@VERSION@|$(VERSION)|; s|@PACKAGES@|$(PACKAGES)|' $< > $@

# The manual page is made from the same tables as the help texts.
$(BUILD)/stavewright.1: $(BUILD)/stavewright
	@$< manual > $@

install: all
	$(say) INSTALL $(DESTDIR)$(PREFIX)
	$(Q)install -d $(DESTDIR)$(PREFIX)/bin $(DESTDIR)$(LIBDIR)/pkgconfig $(DESTDIR)$(PREFIX)/include/stavewright \
	  $(DESTDIR)$(PREFIX)/share/man/man1
	$(Q)install -m 644 $(BUILD)/stavewright.1 $(DESTDIR)$(PREFIX)/share/man/man1/stavewright.1
	$(Q)install -m 755 $(BUILD)/stavewright $(DESTDIR)$(PREFIX)/bin/stavewright
	$(Q)install -m 644 $(BUILD)/libstavewright.a $(DESTDIR)$(LIBDIR)/libstavewright.a
	$(Q)install -m 644 $(BUILD)/libstavewright.so $(DESTDIR)$(LIBDIR)/libstavewright.so.$(SO_VERSION)
	$(Q)ln -sf libstavewright.so.$(SO_VERSION) $(DESTDIR)$(LIBDIR)/libstavewright.so
	$(Q)install -m 644 $(BUILD)/stavewright.pc $(DESTDIR)$(LIBDIR)/pkgconfig/stavewright.pc
	$(Q)install -m 644 $(HEADERS) $(DESTDIR)$(PREFIX)/include/stavewright

clean:
	rm -rf $(BUILD)

# Needs tree-sitter's command (cargo install tree-sitter-cli); the result is committed. The digests let a test say
# when grammar.js was changed without this, or parser.c by hand.
grammar:
	cd grammar && tree-sitter generate --abi 14 && rm -f src/node-types.json
	cd grammar && sha256sum grammar.js src/parser.c > generated-from.sha256

format:
	clang-format -i $(shell git ls-files '*.c' '*.h' | grep -v '^grammar/src/\(parser.c\|tree_sitter\)')

# ---- the demo ------------------------------------------------------------------------------------------------------

# Installs what is missing, builds, and runs the main job on the demo film.
demo:
	@tests/install-packages.sh
	@$(MAKE) --no-print-directory all
	@tests/demo.sh $(BUILD)/stavewright corpus

# ---- tests ---------------------------------------------------------------------------------------------------------

$(BUILD)/tests/%: $(BUILD)/test/tests/%.o $(BUILD)/test/libstavewright.a $(BUILD)/stamps/link
	$(say) LINK $@
	@mkdir -p $(@D)
	$(Q)$(CC) $(SANITIZE) $(LDFLAGS) $(filter %.o %.a,$^) -o $@ $(LIBS) -lcmocka

test: all $(TEST_PROGRAMS) $(BUILD)/test/stavewright
	@tests/run.sh $(BUILD) "$(SCORES)" "$(LILYPOND)" $(TEST_SCRIPTS) $(TEST_PROGRAMS)

# Asks the compiler again for the answers that the reading tests have stored.
test-reference:
	@tests/reference/ask_compiler.py "$(LILYPOND)"

# Looks for threads that change what others read: everything built for ThreadSanitizer, and the demo film checked.
THREAD_OBJECTS := $(addprefix $(BUILD)/threads/,$(OBJECTS) src/app/main.o)
THREAD_FLAGS := -g -O1 -w -fsanitize=thread
$(BUILD)/threads/%.o: %.c | packages
	$(say) 'CC threads' $<
	@mkdir -p $(@D)
	$(Q)$(CC) $(BASE_FLAGS) $(THREAD_FLAGS) -MMD -MP -c $< -o $@
$(BUILD)/threads/generated/%.o: $(BUILD)/generated/%.c | packages
	@mkdir -p $(@D)
	$(Q)$(CC) $(BASE_FLAGS) $(THREAD_FLAGS) -c $< -o $@
$(BUILD)/threads/stavewright: $(THREAD_OBJECTS)
	$(say) LINK $@
	$(Q)$(CC) $(THREAD_FLAGS) -Wl,--as-needed $(LDFLAGS) $^ -o $@ $(LIBS)

# A race ends the command with status 66; findings, which the demo film has, with 1.
test-threads: $(BUILD)/threads/stavewright
	@for words in 'check --quiet --format json' outline 'bars --check' players; do \
	  TSAN_OPTIONS="exitcode=66 halt_on_error=1" $< $$words corpus >/dev/null || [ $$? = 1 ] || exit 1; \
	done; echo "no thread changes what another one reads"

# Looks for inputs that crash the reader, make it hang or take too much memory. New ones go to tests/fuzz/crashers, and
# make test reads them from then on.
FUZZ_OBJECTS := $(addprefix $(BUILD)/fuzz/,$(OBJECTS) tests/fuzz/test_read.o)
FUZZ_FLAGS := -DSW_LIBFUZZER -O1 -g -w -fsanitize=fuzzer-no-link,address,undefined -fno-sanitize-recover=undefined
$(BUILD)/fuzz/grammar/src/parser.o: private FUZZ_FLAGS := -O1 -g -w
$(BUILD)/fuzz/%.o: %.c | packages
	$(say) 'CC fuzz' $<
	@mkdir -p $(@D)
	$(Q)$(CLANG) $(BASE_FLAGS) $(FUZZ_FLAGS) -MMD -MP -c $< -o $@
$(BUILD)/fuzz/generated/%.o: $(BUILD)/generated/%.c | packages
	@mkdir -p $(@D)
	$(Q)$(CLANG) $(BASE_FLAGS) $(FUZZ_FLAGS) -c $< -o $@
$(BUILD)/fuzz/fuzz_read: $(FUZZ_OBJECTS)
	$(say) LINK $@
	$(Q)$(CLANG) -fsanitize=fuzzer,address,undefined $(LDFLAGS) $^ -o $@ $(LIBS)

fuzz: $(BUILD)/fuzz/fuzz_read
	@mkdir -p $(BUILD)/fuzz/corpus
	$(BUILD)/fuzz/fuzz_read -max_total_time=$(FUZZ_SECONDS) -timeout=40 -rss_limit_mb=2048 -max_len=20000 \
	  -dict=tests/fuzz/words.dict -artifact_prefix=tests/fuzz/crashers/ \
	  $(BUILD)/fuzz/corpus tests/fuzz/seeds tests/reference/reading

# ---- benchmarks ----------------------------------------------------------------------------------------------------

$(BUILD)/bench/%: $(BUILD)/release/tests/bench/%.o $(BUILD)/libstavewright.a $(BUILD)/stamps/link
	@mkdir -p $(@D)
	$(Q)$(CC) -fno-lto $(LDFLAGS) $(filter %.o %.a,$^) -o $@ $(LIBS)

bench: all $(BUILD)/bench/bench $(BUILD)/bench/bench_edit $(BUILD)/bench/bench_moves $(BUILD)/bench/bench_parse
	@tests/bench/run.sh $(BUILD) "$(SCORES)" "$(LILYPOND)"
	@tests/bench/film.sh $(BUILD) $(BUILD)/bench/film "$(LILYPOND)"

-include $(RELEASE_OBJECTS:.o=.d) $(TEST_OBJECTS:.o=.d) $(TEST_SOURCES:%.c=$(BUILD)/test/%.d) \
	$(BUILD)/release/src/app/main.d $(BUILD)/test/src/app/main.d $(BUILD)/release/tests/bench/bench.d \
	$(BUILD)/release/tests/bench/bench_edit.d $(BUILD)/release/tests/bench/bench_moves.d \
	$(BUILD)/release/tests/bench/bench_parse.d $(FUZZ_OBJECTS:.o=.d) $(THREAD_OBJECTS:.o=.d)
