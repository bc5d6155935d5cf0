# stavewright: see README.md. The settings a builder may change stand first.
CC ?= cc
CFLAGS ?= -O2 -g
PREFIX ?= /usr/local
DESTDIR ?=
BUILD ?= build
LILYPOND ?= lilypond
# Real scores with the compiler's reading of them, used by tests when they are there: see tests/reference/README.md.
SCORES ?= ../shared/scores

VERSION := 0.1.0
PACKAGES := tree-sitter libpcre2-8 yaml-0.1 jansson libgit2
APT_PACKAGES := build-essential pkg-config libtree-sitter-dev libpcre2-dev libyaml-dev libjansson-dev \
	libgit2-dev libcmocka-dev lilypond python3

WARNINGS := -Wall -Wextra -Wpedantic -Wshadow -Wconversion -Wmissing-prototypes -Wstrict-prototypes -Werror
SANITIZE := -fsanitize=address,undefined -fno-sanitize-recover=undefined
BASE_FLAGS = -std=c17 -D_GNU_SOURCE -DSW_VERSION='"$(VERSION)"' -Iinclude -Isrc -I$(BUILD) -fPIC -fvisibility=default \
	-MMD -MP $(shell pkg-config --cflags $(PACKAGES))
LIBS = $(shell pkg-config --libs $(PACKAGES)) -lm

LIBRARY_SOURCES := $(filter-out src/app/main.c,$(sort $(wildcard src/*/*.c)))
GENERATED := $(BUILD)/generated/instruments.c
GRAMMAR_SOURCES := grammar/src/parser.c grammar/src/scanner.c
HEADERS := $(wildcard include/stavewright/*.h)
TESTS := $(basename $(notdir $(sort $(wildcard tests/unit/test_*.c tests/golden/test_*.c tests/property/test_*.c \
	tests/reference/test_*.c))))

objects = $(patsubst %.c,$(BUILD)/$(1)/%.o,$(LIBRARY_SOURCES) $(GRAMMAR_SOURCES)) $(BUILD)/$(1)/instruments.o
RELEASE_OBJECTS := $(call objects,release)
TEST_OBJECTS := $(call objects,test)

.PHONY: all demo test test-unit test-reference bench install clean grammar format packages
.SECONDARY:
all: packages $(BUILD)/stavewright $(BUILD)/libstavewright.a $(BUILD)/libstavewright.so $(BUILD)/stavewright.pc

# ---- what is built -------------------------------------------------------------------------------------------------

# Says what is missing before the compiler does.
packages:
	@pkg-config --exists $(PACKAGES) 2>/dev/null || { tests/install-packages.sh --only-say $(APT_PACKAGES); exit 2; }

$(BUILD)/generated/%.c: src/players/%.yaml
	@mkdir -p $(@D)
	{ printf '#include <stddef.h>\nextern const unsigned char sw_$*_yaml[];\nextern const size_t sw_$*_yaml_length;\nconst unsigned char sw_$*_yaml[] = {\n'; \
	od -An -v -tx1 $< | sed 's/ \([0-9a-f][0-9a-f]\)/0x\1,/g'; \
	printf '0};\nconst size_t sw_$*_yaml_length = sizeof sw_$*_yaml - 1;\n'; } > $@.new && mv $@.new $@

# The generated parser is the tree-sitter command's text, not ours: no warnings wanted for it.
$(BUILD)/release/grammar/%.o: grammar/%.c
	@mkdir -p $(@D)
	$(CC) $(BASE_FLAGS) -Igrammar/src $(CFLAGS) -w -c $< -o $@
$(BUILD)/test/grammar/%.o: grammar/%.c
	@mkdir -p $(@D)
	$(CC) $(BASE_FLAGS) -Igrammar/src -g -O1 $(SANITIZE) -w -c $< -o $@
$(BUILD)/release/%.o: %.c
	@mkdir -p $(@D)
	$(CC) $(BASE_FLAGS) $(WARNINGS) $(CFLAGS) -c $< -o $@
$(BUILD)/test/%.o: %.c
	@mkdir -p $(@D)
	$(CC) $(BASE_FLAGS) $(WARNINGS) -g -O1 $(SANITIZE) -c $< -o $@
$(BUILD)/release/%.o: $(BUILD)/generated/%.c
	@mkdir -p $(@D)
	$(CC) $(BASE_FLAGS) $(CFLAGS) -c $< -o $@
$(BUILD)/test/%.o: $(BUILD)/generated/%.c
	@mkdir -p $(@D)
	$(CC) $(BASE_FLAGS) -g -O1 $(SANITIZE) -c $< -o $@

$(BUILD)/libstavewright.a: $(RELEASE_OBJECTS)
	rm -f $@ && $(AR) rcs $@ $^
$(BUILD)/libstavewright.so: $(RELEASE_OBJECTS)
	$(CC) -shared -Wl,-soname,libstavewright.so.0 $(LDFLAGS) $^ -o $@ $(LIBS)
$(BUILD)/stavewright: $(BUILD)/release/src/app/main.o $(BUILD)/libstavewright.a
	$(CC) $(LDFLAGS) $^ -o $@ $(LIBS)
$(BUILD)/test/stavewright: $(BUILD)/test/src/app/main.o $(TEST_OBJECTS)
	$(CC) $(SANITIZE) $^ -o $@ $(LIBS)
$(BUILD)/stavewright.pc: Makefile
	@mkdir -p $(@D)
	printf 'prefix=%s\nlibdir=$${prefix}/lib\nincludedir=$${prefix}/include\n\nName: stavewright\nDescription: reads, checks and transforms LilyPond scores\nVersion: %s\nRequires.private: %s\nLibs: -L$${libdir} -lstavewright\nLibs.private: -lm\nCflags: -I$${includedir}\n' \
	  '$(PREFIX)' '$(VERSION)' '$(PACKAGES)' > $@

install: all
	install -d $(DESTDIR)$(PREFIX)/bin $(DESTDIR)$(PREFIX)/lib/pkgconfig $(DESTDIR)$(PREFIX)/include/stavewright
	install -m 755 $(BUILD)/stavewright $(DESTDIR)$(PREFIX)/bin/stavewright
	install -m 644 $(BUILD)/libstavewright.a $(DESTDIR)$(PREFIX)/lib/libstavewright.a
	install -m 755 $(BUILD)/libstavewright.so $(DESTDIR)$(PREFIX)/lib/libstavewright.so.0
	ln -sf libstavewright.so.0 $(DESTDIR)$(PREFIX)/lib/libstavewright.so
	install -m 644 $(BUILD)/stavewright.pc $(DESTDIR)$(PREFIX)/lib/pkgconfig/stavewright.pc
	install -m 644 $(HEADERS) $(DESTDIR)$(PREFIX)/include/stavewright

clean:
	rm -rf $(BUILD)

# Needs tree-sitter's command (cargo install tree-sitter-cli); the result is committed.
grammar:
	cd grammar && tree-sitter generate --abi 14 && rm -f src/node-types.json.tmp
	cd grammar && sha256sum grammar.js > generated-from.sha256

format:
	clang-format -i $(shell git ls-files '*.c' '*.h' | grep -v '^grammar/src/\(parser.c\|tree_sitter\)')

# ---- the demo ------------------------------------------------------------------------------------------------------

# Installs what is missing, builds, and runs the main job on the demo film.
demo:
	@pkg-config --exists $(PACKAGES) cmocka 2>/dev/null && command -v $(CC) >/dev/null && command -v $(LILYPOND) >/dev/null \
	  || tests/install-packages.sh $(APT_PACKAGES)
	@$(MAKE) --no-print-directory all
	@tests/demo.sh $(BUILD)/stavewright corpus

# ---- tests ---------------------------------------------------------------------------------------------------------

define test_rule
$(BUILD)/tests/$(notdir $(basename $(1))): $(1) $(TEST_OBJECTS) $(wildcard tests/*.h)
	@mkdir -p $$(@D)
	$(CC) $(BASE_FLAGS) $(WARNINGS) -Itests -g -O1 $(SANITIZE) $(1) $(TEST_OBJECTS) -o $$@ $(LIBS) $$$$(pkg-config --libs cmocka)
endef
$(foreach source,$(wildcard tests/*/test_*.c),$(eval $(call test_rule,$(source))))

test: all $(addprefix $(BUILD)/tests/,$(TESTS)) $(BUILD)/test/stavewright
	@tests/run.sh $(BUILD) "$(SCORES)" "$(LILYPOND)" $(TESTS)

bench: all
	@tests/bench/run.sh $(BUILD) "$(SCORES)" "$(LILYPOND)"

-include $(shell find $(BUILD) -name '*.d' 2>/dev/null)
