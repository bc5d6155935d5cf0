/* SARIF 2.1.0, an OASIS standard: "Static Analysis Results Interchange Format". Section numbers in comments
 * are those of its text. */
#include <ctype.h>
#include <string.h>

#include "report/forms.h"

/* A path as a URI reference (3.10): bytes outside of the unreserved ones are escaped. */
static json_t *uri(const char *path)
{
    sw_buffer text = {0};
    const char *slash = strchr(path, '/');
    if (path[0] == '/') {
        sw_buffer_string(&text, "file://");
    } else if (memchr(path, ':', slash == NULL ? strlen(path) : (size_t)(slash - path)) != NULL) {
        sw_buffer_string(&text, "./"); /* what stands before a colon would be a scheme */
    }
    for (const char *p = path; *p != '\0'; p++) {
        unsigned char byte = (unsigned char)*p;
        if (byte < 0x80 && (isalnum(byte) || strchr("-._~/", byte) != NULL)) {
            sw_buffer_char(&text, *p);
        } else {
            sw_buffer_format(&text, "%%%02X", byte);
        }
    }
    json_t *value = json_string(sw_buffer_text(&text));
    sw_buffer_free(&text);
    return value;
}

/* {"text": ...}: a message (3.11) or a message string (3.12) */
static json_t *message(const char *text)
{
    json_t *object = json_object();
    json_object_set_new(object, "text", sw_json_text(text));
    return object;
}

/* 3.49: what is said of a rule. */
static json_t *descriptor(const sw_rule *rule)
{
    json_t *object = json_object();
    json_object_set_new(object, "id", json_string(rule->name));
    json_object_set_new(object, "shortDescription", message(rule->summary));
    json_object_set_new(object, "fullDescription", message(rule->summary));
    json_object_set_new(object, "help", message(rule->explain));
    json_t *configuration = json_object();
    json_object_set_new(configuration, "level", json_string(sw_severity_word(rule->severity)));
    json_object_set_new(object, "defaultConfiguration", configuration);
    return object;
}

static json_t *driver(void)
{
    json_t *rules = json_array();
    for (size_t i = 0; i < sw_rules_count(); i++) {
        json_array_append_new(rules, descriptor(sw_rules_get(i)));
    }
    json_t *object = json_object();
    json_object_set_new(object, "name", json_string("stavewright"));
    json_object_set_new(object, "version", json_string(SW_VERSION));
    json_object_set_new(object, "rules", rules);
    return object;
}

/* 3.28 */
static json_t *location(const sw_checked *item)
{
    json_t *region = json_object();
    json_object_set_new(region, "startLine", json_integer(item->finding.line));
    json_object_set_new(region, "startColumn", json_integer(item->finding.column));
    json_object_set_new(region, "endLine", json_integer(item->end_line));
    json_object_set_new(region, "endColumn", json_integer(item->end_column));
    json_t *artifact = json_object();
    json_object_set_new(artifact, "uri", uri(item->path));
    json_t *physical = json_object();
    json_object_set_new(physical, "artifactLocation", artifact);
    json_object_set_new(physical, "region", region);
    json_t *object = json_object();
    json_object_set_new(object, "physicalLocation", physical);
    if (item->staff != NULL) {
        json_t *logical = json_object();
        json_object_set_new(logical, "name", sw_json_text(item->staff));
        json_object_set_new(logical, "kind", json_string("staff"));
        json_object_set_new(object, "logicalLocations", json_pack("[o]", logical));
    }
    return object;
}

/* 3.27 */
static json_t *finding(const sw_check_result *checked, size_t i)
{
    const sw_checked *item = &checked->items[i];
    const sw_finding *f = &item->finding;
    json_t *object = json_object();
    json_object_set_new(object, "ruleId", json_string(f->rule));
    for (size_t rule = 0; rule < sw_rules_count(); rule++) {
        if (strcmp(sw_rules_get(rule)->name, f->rule) == 0) {
            json_object_set_new(object, "ruleIndex", json_integer((json_int_t)rule));
        }
    }
    json_object_set_new(object, "level", json_string(sw_severity_word(f->severity)));
    json_object_set_new(object, "message", message(f->message));
    json_object_set_new(object, "locations", json_pack("[o]", location(item)));
    json_t *fingerprints = json_object();
    json_object_set_new(fingerprints, "stavewright/v1", sw_json_fingerprint(checked, i));
    json_object_set_new(object, "partialFingerprints", fingerprints);
    return object;
}

void sw_print_sarif(const sw_check_result *checked, bool complete, sw_buffer *result)
{
    json_t *results = json_array();
    for (size_t i = 0; i < checked->count; i++) {
        json_array_append_new(results, finding(checked, i));
    }
    json_t *tool = json_object();
    json_object_set_new(tool, "driver", driver());
    json_t *invocation = json_object();
    json_object_set_new(invocation, "executionSuccessful", json_boolean(complete));
    json_t *run = json_object();
    json_object_set_new(run, "tool", tool);
    json_object_set_new(run, "columnKind", json_string("unicodeCodePoints"));
    json_object_set_new(run, "invocations", json_pack("[o]", invocation));
    json_object_set_new(run, "results", results);
    json_t *log = json_object();
    json_object_set_new(
        log, "$schema",
        json_string(
            "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json"));
    json_object_set_new(log, "version", json_string("2.1.0"));
    json_object_set_new(log, "runs", json_pack("[o]", run));
    sw_json_print(log, result);
}
