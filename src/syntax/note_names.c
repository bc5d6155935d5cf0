/* Note names of the input languages (language manual, 'Note names in other languages'), with staff step (0 = C) and
 * alteration in quarter tones. Languages with two spellings of their own name share a table. */
#include "syntax/note_names.h"

static const sw_note_name nederlands[] = {
    {"ceses", 0, -4}, {"ceseh", 0, -3}, {"ces", 0, -2}, {"ceh", 0, -1}, {"c", 0, 0}, {"cih", 0, 1},
    {"cis", 0, 2}, {"cisih", 0, 3}, {"cisis", 0, 4}, {"deses", 1, -4}, {"deseh", 1, -3}, {"des", 1, -2},
    {"deh", 1, -1}, {"d", 1, 0}, {"dih", 1, 1}, {"dis", 1, 2}, {"disih", 1, 3}, {"disis", 1, 4},
    {"eeses", 2, -4}, {"eses", 2, -4}, {"eeseh", 2, -3}, {"ees", 2, -2}, {"es", 2, -2}, {"eeh", 2, -1},
    {"e", 2, 0}, {"eih", 2, 1}, {"eis", 2, 2}, {"eisih", 2, 3}, {"eisis", 2, 4}, {"feses", 3, -4},
    {"feseh", 3, -3}, {"fes", 3, -2}, {"feh", 3, -1}, {"f", 3, 0}, {"fih", 3, 1}, {"fis", 3, 2},
    {"fisih", 3, 3}, {"fisis", 3, 4}, {"geses", 4, -4}, {"geseh", 4, -3}, {"ges", 4, -2}, {"geh", 4, -1},
    {"g", 4, 0}, {"gih", 4, 1}, {"gis", 4, 2}, {"gisih", 4, 3}, {"gisis", 4, 4}, {"aeses", 5, -4},
    {"ases", 5, -4}, {"aeseh", 5, -3}, {"aes", 5, -2}, {"as", 5, -2}, {"aeh", 5, -1}, {"a", 5, 0},
    {"aih", 5, 1}, {"ais", 5, 2}, {"aisih", 5, 3}, {"aisis", 5, 4}, {"beses", 6, -4}, {"beseh", 6, -3},
    {"bes", 6, -2}, {"beh", 6, -1}, {"b", 6, 0}, {"bih", 6, 1}, {"bis", 6, 2}, {"bisih", 6, 3},
    {"bisis", 6, 4},
};

static const sw_note_name english[] = {
    {"cff", 0, -4}, {"ctqf", 0, -3}, {"cf", 0, -2}, {"cqf", 0, -1}, {"c", 0, 0}, {"cqs", 0, 1},
    {"cs", 0, 2}, {"ctqs", 0, 3}, {"css", 0, 4}, {"cx", 0, 4}, {"dff", 1, -4}, {"dtqf", 1, -3},
    {"df", 1, -2}, {"dqf", 1, -1}, {"d", 1, 0}, {"dqs", 1, 1}, {"ds", 1, 2}, {"dtqs", 1, 3}, {"dss", 1, 4},
    {"dx", 1, 4}, {"eff", 2, -4}, {"etqf", 2, -3}, {"ef", 2, -2}, {"eqf", 2, -1}, {"e", 2, 0},
    {"eqs", 2, 1}, {"es", 2, 2}, {"etqs", 2, 3}, {"ess", 2, 4}, {"ex", 2, 4}, {"fff", 3, -4},
    {"ftqf", 3, -3}, {"ff", 3, -2}, {"fqf", 3, -1}, {"f", 3, 0}, {"fqs", 3, 1}, {"fs", 3, 2},
    {"ftqs", 3, 3}, {"fss", 3, 4}, {"fx", 3, 4}, {"gff", 4, -4}, {"gtqf", 4, -3}, {"gf", 4, -2},
    {"gqf", 4, -1}, {"g", 4, 0}, {"gqs", 4, 1}, {"gs", 4, 2}, {"gtqs", 4, 3}, {"gss", 4, 4}, {"gx", 4, 4},
    {"aff", 5, -4}, {"atqf", 5, -3}, {"af", 5, -2}, {"aqf", 5, -1}, {"a", 5, 0}, {"aqs", 5, 1},
    {"as", 5, 2}, {"atqs", 5, 3}, {"ass", 5, 4}, {"ax", 5, 4}, {"bff", 6, -4}, {"btqf", 6, -3},
    {"bf", 6, -2}, {"bqf", 6, -1}, {"b", 6, 0}, {"bqs", 6, 1}, {"bs", 6, 2}, {"btqs", 6, 3}, {"bss", 6, 4},
    {"bx", 6, 4}, {"c-flatflat", 0, -4}, {"c-flat", 0, -2}, {"c-natural", 0, 0}, {"c-sharp", 0, 2},
    {"c-sharpsharp", 0, 4}, {"d-flatflat", 1, -4}, {"d-flat", 1, -2}, {"d-natural", 1, 0},
    {"d-sharp", 1, 2}, {"d-sharpsharp", 1, 4}, {"e-flatflat", 2, -4}, {"e-flat", 2, -2},
    {"e-natural", 2, 0}, {"e-sharp", 2, 2}, {"e-sharpsharp", 2, 4}, {"f-flatflat", 3, -4},
    {"f-flat", 3, -2}, {"f-natural", 3, 0}, {"f-sharp", 3, 2}, {"f-sharpsharp", 3, 4},
    {"g-flatflat", 4, -4}, {"g-flat", 4, -2}, {"g-natural", 4, 0}, {"g-sharp", 4, 2},
    {"g-sharpsharp", 4, 4}, {"a-flatflat", 5, -4}, {"a-flat", 5, -2}, {"a-natural", 5, 0},
    {"a-sharp", 5, 2}, {"a-sharpsharp", 5, 4}, {"b-flatflat", 6, -4}, {"b-flat", 6, -2},
    {"b-natural", 6, 0}, {"b-sharp", 6, 2}, {"b-sharpsharp", 6, 4},
};

static const sw_note_name deutsch[] = {
    {"ceses", 0, -4}, {"ceseh", 0, -3}, {"ces", 0, -2}, {"ceh", 0, -1}, {"c", 0, 0}, {"cih", 0, 1},
    {"cis", 0, 2}, {"cisih", 0, 3}, {"cisis", 0, 4}, {"deses", 1, -4}, {"deseh", 1, -3}, {"des", 1, -2},
    {"deh", 1, -1}, {"d", 1, 0}, {"dih", 1, 1}, {"dis", 1, 2}, {"disih", 1, 3}, {"disis", 1, 4},
    {"eses", 2, -4}, {"eseh", 2, -3}, {"es", 2, -2}, {"eeh", 2, -1}, {"eh", 2, -1}, {"e", 2, 0},
    {"eih", 2, 1}, {"eis", 2, 2}, {"eisih", 2, 3}, {"eisis", 2, 4}, {"feses", 3, -4}, {"feseh", 3, -3},
    {"fes", 3, -2}, {"feh", 3, -1}, {"f", 3, 0}, {"fih", 3, 1}, {"fis", 3, 2}, {"fisih", 3, 3},
    {"fisis", 3, 4}, {"geses", 4, -4}, {"geseh", 4, -3}, {"ges", 4, -2}, {"geh", 4, -1}, {"g", 4, 0},
    {"gih", 4, 1}, {"gis", 4, 2}, {"gisih", 4, 3}, {"gisis", 4, 4}, {"asas", 5, -4}, {"ases", 5, -4},
    {"asah", 5, -3}, {"aseh", 5, -3}, {"as", 5, -2}, {"aeh", 5, -1}, {"ah", 5, -1}, {"a", 5, 0},
    {"aih", 5, 1}, {"ais", 5, 2}, {"aisih", 5, 3}, {"aisis", 5, 4}, {"heses", 6, -4}, {"heseh", 6, -3},
    {"b", 6, -2}, {"heh", 6, -1}, {"h", 6, 0}, {"hih", 6, 1}, {"his", 6, 2}, {"hisih", 6, 3},
    {"hisis", 6, 4},
};

static const sw_note_name italiano[] = {
    {"dobb", 0, -4}, {"dobsb", 0, -3}, {"dob", 0, -2}, {"dosb", 0, -1}, {"do", 0, 0}, {"dosd", 0, 1},
    {"dod", 0, 2}, {"dodsd", 0, 3}, {"dodd", 0, 4}, {"rebb", 1, -4}, {"rebsb", 1, -3}, {"reb", 1, -2},
    {"resb", 1, -1}, {"re", 1, 0}, {"resd", 1, 1}, {"red", 1, 2}, {"redsd", 1, 3}, {"redd", 1, 4},
    {"mibb", 2, -4}, {"mibsb", 2, -3}, {"mib", 2, -2}, {"misb", 2, -1}, {"mi", 2, 0}, {"misd", 2, 1},
    {"mid", 2, 2}, {"midsd", 2, 3}, {"midd", 2, 4}, {"fabb", 3, -4}, {"fabsb", 3, -3}, {"fab", 3, -2},
    {"fasb", 3, -1}, {"fa", 3, 0}, {"fasd", 3, 1}, {"fad", 3, 2}, {"fadsd", 3, 3}, {"fadd", 3, 4},
    {"solbb", 4, -4}, {"solbsb", 4, -3}, {"solb", 4, -2}, {"solsb", 4, -1}, {"sol", 4, 0}, {"solsd", 4, 1},
    {"sold", 4, 2}, {"soldsd", 4, 3}, {"soldd", 4, 4}, {"labb", 5, -4}, {"labsb", 5, -3}, {"lab", 5, -2},
    {"lasb", 5, -1}, {"la", 5, 0}, {"lasd", 5, 1}, {"lad", 5, 2}, {"ladsd", 5, 3}, {"ladd", 5, 4},
    {"sibb", 6, -4}, {"sibsb", 6, -3}, {"sib", 6, -2}, {"sisb", 6, -1}, {"si", 6, 0}, {"sisd", 6, 1},
    {"sid", 6, 2}, {"sidsd", 6, 3}, {"sidd", 6, 4},
};

static const sw_note_name franais[] = {
    {"dobb", 0, -4}, {"dobsb", 0, -3}, {"dob", 0, -2}, {"dosb", 0, -1}, {"do", 0, 0}, {"dosd", 0, 1},
    {"dod", 0, 2}, {"dodsd", 0, 3}, {"dodd", 0, 4}, {"dox", 0, 4}, {"rébb", 1, -4}, {"rébsb", 1, -3},
    {"réb", 1, -2}, {"résb", 1, -1}, {"ré", 1, 0}, {"résd", 1, 1}, {"réd", 1, 2}, {"rédsd", 1, 3},
    {"rédd", 1, 4}, {"réx", 1, 4}, {"rebb", 1, -4}, {"rebsb", 1, -3}, {"reb", 1, -2}, {"resb", 1, -1},
    {"re", 1, 0}, {"resd", 1, 1}, {"red", 1, 2}, {"redsd", 1, 3}, {"redd", 1, 4}, {"rex", 1, 4},
    {"mibb", 2, -4}, {"mibsb", 2, -3}, {"mib", 2, -2}, {"misb", 2, -1}, {"mi", 2, 0}, {"misd", 2, 1},
    {"mid", 2, 2}, {"midsd", 2, 3}, {"midd", 2, 4}, {"mix", 2, 4}, {"fabb", 3, -4}, {"fabsb", 3, -3},
    {"fab", 3, -2}, {"fasb", 3, -1}, {"fa", 3, 0}, {"fasd", 3, 1}, {"fad", 3, 2}, {"fadsd", 3, 3},
    {"fadd", 3, 4}, {"fax", 3, 4}, {"solbb", 4, -4}, {"solbsb", 4, -3}, {"solb", 4, -2}, {"solsb", 4, -1},
    {"sol", 4, 0}, {"solsd", 4, 1}, {"sold", 4, 2}, {"soldsd", 4, 3}, {"soldd", 4, 4}, {"solx", 4, 4},
    {"labb", 5, -4}, {"labsb", 5, -3}, {"lab", 5, -2}, {"lasb", 5, -1}, {"la", 5, 0}, {"lasd", 5, 1},
    {"lad", 5, 2}, {"ladsd", 5, 3}, {"ladd", 5, 4}, {"lax", 5, 4}, {"sibb", 6, -4}, {"sibsb", 6, -3},
    {"sib", 6, -2}, {"sisb", 6, -1}, {"si", 6, 0}, {"sisd", 6, 1}, {"sid", 6, 2}, {"sidsd", 6, 3},
    {"sidd", 6, 4}, {"six", 6, 4},
};

static const sw_note_name espanol[] = {
    {"dobb", 0, -4}, {"dotcb", 0, -3}, {"dob", 0, -2}, {"docb", 0, -1}, {"do", 0, 0}, {"docs", 0, 1},
    {"dos", 0, 2}, {"dotcs", 0, 3}, {"doss", 0, 4}, {"dox", 0, 4}, {"rebb", 1, -4}, {"retcb", 1, -3},
    {"reb", 1, -2}, {"recb", 1, -1}, {"re", 1, 0}, {"recs", 1, 1}, {"res", 1, 2}, {"retcs", 1, 3},
    {"ress", 1, 4}, {"rex", 1, 4}, {"mibb", 2, -4}, {"mitcb", 2, -3}, {"mib", 2, -2}, {"micb", 2, -1},
    {"mi", 2, 0}, {"mics", 2, 1}, {"mis", 2, 2}, {"mitcs", 2, 3}, {"miss", 2, 4}, {"mix", 2, 4},
    {"fabb", 3, -4}, {"fatcb", 3, -3}, {"fab", 3, -2}, {"facb", 3, -1}, {"fa", 3, 0}, {"facs", 3, 1},
    {"fas", 3, 2}, {"fatcs", 3, 3}, {"fass", 3, 4}, {"fax", 3, 4}, {"solbb", 4, -4}, {"soltcb", 4, -3},
    {"solb", 4, -2}, {"solcb", 4, -1}, {"sol", 4, 0}, {"solcs", 4, 1}, {"sols", 4, 2}, {"soltcs", 4, 3},
    {"solss", 4, 4}, {"solx", 4, 4}, {"labb", 5, -4}, {"latcb", 5, -3}, {"lab", 5, -2}, {"lacb", 5, -1},
    {"la", 5, 0}, {"lacs", 5, 1}, {"las", 5, 2}, {"latcs", 5, 3}, {"lass", 5, 4}, {"lax", 5, 4},
    {"sibb", 6, -4}, {"sitcb", 6, -3}, {"sib", 6, -2}, {"sicb", 6, -1}, {"si", 6, 0}, {"sics", 6, 1},
    {"sis", 6, 2}, {"sitcs", 6, 3}, {"siss", 6, 4}, {"six", 6, 4},
};

static const sw_note_name catalan[] = {
    {"dobb", 0, -4}, {"dotqb", 0, -3}, {"dob", 0, -2}, {"doqb", 0, -1}, {"do", 0, 0}, {"doqd", 0, 1},
    {"dod", 0, 2}, {"dotqd", 0, 3}, {"dodd", 0, 4}, {"rebb", 1, -4}, {"retqb", 1, -3}, {"reb", 1, -2},
    {"reqb", 1, -1}, {"re", 1, 0}, {"reqd", 1, 1}, {"red", 1, 2}, {"retqd", 1, 3}, {"redd", 1, 4},
    {"mibb", 2, -4}, {"mitqb", 2, -3}, {"mib", 2, -2}, {"miqb", 2, -1}, {"mi", 2, 0}, {"miqd", 2, 1},
    {"mid", 2, 2}, {"mitqd", 2, 3}, {"midd", 2, 4}, {"fabb", 3, -4}, {"fatqb", 3, -3}, {"fab", 3, -2},
    {"faqb", 3, -1}, {"fa", 3, 0}, {"faqd", 3, 1}, {"fad", 3, 2}, {"fatqd", 3, 3}, {"fadd", 3, 4},
    {"solbb", 4, -4}, {"soltqb", 4, -3}, {"solb", 4, -2}, {"solqb", 4, -1}, {"sol", 4, 0}, {"solqd", 4, 1},
    {"sold", 4, 2}, {"soltqd", 4, 3}, {"soldd", 4, 4}, {"labb", 5, -4}, {"latqb", 5, -3}, {"lab", 5, -2},
    {"laqb", 5, -1}, {"la", 5, 0}, {"laqd", 5, 1}, {"lad", 5, 2}, {"latqd", 5, 3}, {"ladd", 5, 4},
    {"sibb", 6, -4}, {"sitqb", 6, -3}, {"sib", 6, -2}, {"siqb", 6, -1}, {"si", 6, 0}, {"siqd", 6, 1},
    {"sid", 6, 2}, {"sitqd", 6, 3}, {"sidd", 6, 4}, {"doqs", 0, 1}, {"dos", 0, 2}, {"dotqs", 0, 3},
    {"doss", 0, 4}, {"reqs", 1, 1}, {"res", 1, 2}, {"retqs", 1, 3}, {"ress", 1, 4}, {"miqs", 2, 1},
    {"mis", 2, 2}, {"mitqs", 2, 3}, {"miss", 2, 4}, {"faqs", 3, 1}, {"fas", 3, 2}, {"fatqs", 3, 3},
    {"fass", 3, 4}, {"solqs", 4, 1}, {"sols", 4, 2}, {"soltqs", 4, 3}, {"solss", 4, 4}, {"laqs", 5, 1},
    {"las", 5, 2}, {"latqs", 5, 3}, {"lass", 5, 4}, {"siqs", 6, 1}, {"sis", 6, 2}, {"sitqs", 6, 3},
    {"siss", 6, 4},
};

static const sw_note_name portugues[] = {
    {"dobb", 0, -4}, {"dobtqt", 0, -3}, {"dob", 0, -2}, {"dobqt", 0, -1}, {"do", 0, 0}, {"dosqt", 0, 1},
    {"dos", 0, 2}, {"dostqt", 0, 3}, {"doss", 0, 4}, {"rebb", 1, -4}, {"rebtqt", 1, -3}, {"reb", 1, -2},
    {"rebqt", 1, -1}, {"re", 1, 0}, {"resqt", 1, 1}, {"res", 1, 2}, {"restqt", 1, 3}, {"ress", 1, 4},
    {"mibb", 2, -4}, {"mibtqt", 2, -3}, {"mib", 2, -2}, {"mibqt", 2, -1}, {"mi", 2, 0}, {"misqt", 2, 1},
    {"mis", 2, 2}, {"mistqt", 2, 3}, {"miss", 2, 4}, {"fabb", 3, -4}, {"fabtqt", 3, -3}, {"fab", 3, -2},
    {"fabqt", 3, -1}, {"fa", 3, 0}, {"fasqt", 3, 1}, {"fas", 3, 2}, {"fastqt", 3, 3}, {"fass", 3, 4},
    {"solbb", 4, -4}, {"solbtqt", 4, -3}, {"solb", 4, -2}, {"solbqt", 4, -1}, {"sol", 4, 0},
    {"solsqt", 4, 1}, {"sols", 4, 2}, {"solstqt", 4, 3}, {"solss", 4, 4}, {"labb", 5, -4},
    {"labtqt", 5, -3}, {"lab", 5, -2}, {"labqt", 5, -1}, {"la", 5, 0}, {"lasqt", 5, 1}, {"las", 5, 2},
    {"lastqt", 5, 3}, {"lass", 5, 4}, {"sibb", 6, -4}, {"sibtqt", 6, -3}, {"sib", 6, -2}, {"sibqt", 6, -1},
    {"si", 6, 0}, {"sisqt", 6, 1}, {"sis", 6, 2}, {"sistqt", 6, 3}, {"siss", 6, 4},
};

static const sw_note_name norsk[] = {
    {"cessess", 0, -4}, {"ceses", 0, -4}, {"cesseh", 0, -3}, {"ceseh", 0, -3}, {"cess", 0, -2},
    {"ces", 0, -2}, {"ceh", 0, -1}, {"c", 0, 0}, {"cih", 0, 1}, {"ciss", 0, 2}, {"cis", 0, 2},
    {"cissih", 0, 3}, {"cisih", 0, 3}, {"cississ", 0, 4}, {"cisis", 0, 4}, {"dessess", 1, -4},
    {"deses", 1, -4}, {"desseh", 1, -3}, {"deseh", 1, -3}, {"dess", 1, -2}, {"des", 1, -2}, {"deh", 1, -1},
    {"d", 1, 0}, {"dih", 1, 1}, {"diss", 1, 2}, {"dis", 1, 2}, {"dissih", 1, 3}, {"disih", 1, 3},
    {"dississ", 1, 4}, {"disis", 1, 4}, {"eessess", 2, -4}, {"eeses", 2, -4}, {"essess", 2, -4},
    {"eses", 2, -4}, {"eesseh", 2, -3}, {"eeseh", 2, -3}, {"eess", 2, -2}, {"ees", 2, -2}, {"ess", 2, -2},
    {"es", 2, -2}, {"eeh", 2, -1}, {"e", 2, 0}, {"eih", 2, 1}, {"eiss", 2, 2}, {"eis", 2, 2},
    {"eissih", 2, 3}, {"eisih", 2, 3}, {"eississ", 2, 4}, {"eisis", 2, 4}, {"fessess", 3, -4},
    {"feses", 3, -4}, {"fesseh", 3, -3}, {"feseh", 3, -3}, {"fess", 3, -2}, {"fes", 3, -2}, {"feh", 3, -1},
    {"f", 3, 0}, {"fih", 3, 1}, {"fiss", 3, 2}, {"fis", 3, 2}, {"fissih", 3, 3}, {"fisih", 3, 3},
    {"fississ", 3, 4}, {"fisis", 3, 4}, {"gessess", 4, -4}, {"geses", 4, -4}, {"geseh", 4, -3},
    {"gesseh", 4, -3}, {"gess", 4, -2}, {"ges", 4, -2}, {"geh", 4, -1}, {"g", 4, 0}, {"gih", 4, 1},
    {"giss", 4, 2}, {"gis", 4, 2}, {"gissih", 4, 3}, {"gisih", 4, 3}, {"gississ", 4, 4}, {"gisis", 4, 4},
    {"assess", 5, -4}, {"ases", 5, -4}, {"aessess", 5, -4}, {"aeses", 5, -4}, {"aesseh", 5, -3},
    {"aeseh", 5, -3}, {"ass", 5, -2}, {"as", 5, -2}, {"aess", 5, -2}, {"aes", 5, -2}, {"aeh", 5, -1},
    {"a", 5, 0}, {"aih", 5, 1}, {"aiss", 5, 2}, {"ais", 5, 2}, {"aissih", 5, 3}, {"aisih", 5, 3},
    {"aississ", 5, 4}, {"aisis", 5, 4}, {"bess", 6, -4}, {"bes", 6, -4}, {"beh", 6, -3}, {"b", 6, -2},
    {"heh", 6, -1}, {"h", 6, 0}, {"hih", 6, 1}, {"hiss", 6, 2}, {"his", 6, 2}, {"hissih", 6, 3},
    {"hisih", 6, 3}, {"hississ", 6, 4}, {"hisis", 6, 4},
};

static const sw_note_name suomi[] = {
    {"ceses", 0, -4}, {"ceseh", 0, -3}, {"ces", 0, -2}, {"ceh", 0, -1}, {"c", 0, 0}, {"cih", 0, 1},
    {"cis", 0, 2}, {"cisih", 0, 3}, {"cisis", 0, 4}, {"deses", 1, -4}, {"deseh", 1, -3}, {"des", 1, -2},
    {"deh", 1, -1}, {"d", 1, 0}, {"dih", 1, 1}, {"dis", 1, 2}, {"disih", 1, 3}, {"disis", 1, 4},
    {"eses", 2, -4}, {"eseh", 2, -3}, {"es", 2, -2}, {"eeh", 2, -1}, {"e", 2, 0}, {"eih", 2, 1},
    {"eis", 2, 2}, {"eisih", 2, 3}, {"eisis", 2, 4}, {"feses", 3, -4}, {"feseh", 3, -3}, {"fes", 3, -2},
    {"feh", 3, -1}, {"f", 3, 0}, {"fih", 3, 1}, {"fis", 3, 2}, {"fisih", 3, 3}, {"fisis", 3, 4},
    {"geses", 4, -4}, {"geseh", 4, -3}, {"ges", 4, -2}, {"geh", 4, -1}, {"g", 4, 0}, {"gih", 4, 1},
    {"gis", 4, 2}, {"gisih", 4, 3}, {"gisis", 4, 4}, {"asas", 5, -4}, {"ases", 5, -4}, {"asah", 5, -3},
    {"aseh", 5, -3}, {"as", 5, -2}, {"aeh", 5, -1}, {"a", 5, 0}, {"aih", 5, 1}, {"ais", 5, 2},
    {"aisih", 5, 3}, {"aisis", 5, 4}, {"heses", 6, -4}, {"bb", 6, -4}, {"bes", 6, -4}, {"heseh", 6, -3},
    {"b", 6, -2}, {"heh", 6, -1}, {"h", 6, 0}, {"hih", 6, 1}, {"his", 6, 2}, {"hisih", 6, 3},
    {"hisis", 6, 4},
};

static const sw_note_name svenska[] = {
    {"cessess", 0, -4}, {"cesseh", 0, -3}, {"cess", 0, -2}, {"ceh", 0, -1}, {"c", 0, 0}, {"cih", 0, 1},
    {"ciss", 0, 2}, {"cissih", 0, 3}, {"cississ", 0, 4}, {"dessess", 1, -4}, {"desseh", 1, -3},
    {"dess", 1, -2}, {"deh", 1, -1}, {"d", 1, 0}, {"dih", 1, 1}, {"diss", 1, 2}, {"dissih", 1, 3},
    {"dississ", 1, 4}, {"essess", 2, -4}, {"esseh", 2, -3}, {"ess", 2, -2}, {"eeh", 2, -1}, {"e", 2, 0},
    {"eih", 2, 1}, {"eiss", 2, 2}, {"eissih", 2, 3}, {"eississ", 2, 4}, {"fessess", 3, -4},
    {"fesseh", 3, -3}, {"fess", 3, -2}, {"feh", 3, -1}, {"f", 3, 0}, {"fih", 3, 1}, {"fiss", 3, 2},
    {"fissih", 3, 3}, {"fississ", 3, 4}, {"gessess", 4, -4}, {"gesseh", 4, -3}, {"gess", 4, -2},
    {"geh", 4, -1}, {"g", 4, 0}, {"gih", 4, 1}, {"giss", 4, 2}, {"gissih", 4, 3}, {"gississ", 4, 4},
    {"assess", 5, -4}, {"asseh", 5, -3}, {"ass", 5, -2}, {"aeh", 5, -1}, {"a", 5, 0}, {"aih", 5, 1},
    {"aiss", 5, 2}, {"aissih", 5, 3}, {"aississ", 5, 4}, {"hessess", 6, -4}, {"hesseh", 6, -3},
    {"b", 6, -2}, {"heh", 6, -1}, {"h", 6, 0}, {"hih", 6, 1}, {"hiss", 6, 2}, {"hissih", 6, 3},
    {"hississ", 6, 4},
};

static const sw_note_name vlaams[] = {
    {"dobb", 0, -4}, {"dobhb", 0, -3}, {"dob", 0, -2}, {"dohb", 0, -1}, {"do", 0, 0}, {"dohk", 0, 1},
    {"dok", 0, 2}, {"dokhk", 0, 3}, {"dokk", 0, 4}, {"rebb", 1, -4}, {"rebhb", 1, -3}, {"reb", 1, -2},
    {"rehb", 1, -1}, {"re", 1, 0}, {"rehk", 1, 1}, {"rek", 1, 2}, {"rekhk", 1, 3}, {"rekk", 1, 4},
    {"mibb", 2, -4}, {"mibhb", 2, -3}, {"mib", 2, -2}, {"mihb", 2, -1}, {"mi", 2, 0}, {"mihk", 2, 1},
    {"mik", 2, 2}, {"mikhk", 2, 3}, {"mikk", 2, 4}, {"fabb", 3, -4}, {"fabhb", 3, -3}, {"fab", 3, -2},
    {"fahb", 3, -1}, {"fa", 3, 0}, {"fahk", 3, 1}, {"fak", 3, 2}, {"fakhk", 3, 3}, {"fakk", 3, 4},
    {"solbb", 4, -4}, {"solbhb", 4, -3}, {"solb", 4, -2}, {"solhb", 4, -1}, {"sol", 4, 0}, {"solhk", 4, 1},
    {"solk", 4, 2}, {"solkhk", 4, 3}, {"solkk", 4, 4}, {"labb", 5, -4}, {"labhb", 5, -3}, {"lab", 5, -2},
    {"lahb", 5, -1}, {"la", 5, 0}, {"lahk", 5, 1}, {"lak", 5, 2}, {"lakhk", 5, 3}, {"lakk", 5, 4},
    {"sibb", 6, -4}, {"sibhb", 6, -3}, {"sib", 6, -2}, {"sihb", 6, -1}, {"si", 6, 0}, {"sihk", 6, 1},
    {"sik", 6, 2}, {"sikhk", 6, 3}, {"sikk", 6, 4},
};

static const sw_note_name arabic[] = {
    {"c", 0, 0}, {"d", 1, 0}, {"e", 2, 0}, {"f", 3, 0}, {"g", 4, 0}, {"a", 5, 0}, {"b", 6, 0}, {"cd", 0, 2},
    {"dd", 1, 2}, {"ed", 2, 2}, {"fd", 3, 2}, {"gd", 4, 2}, {"ad", 5, 2}, {"bd", 6, 2}, {"cb", 0, -2},
    {"db", 1, -2}, {"eb", 2, -2}, {"fb", 3, -2}, {"gb", 4, -2}, {"ab", 5, -2}, {"bb", 6, -2}, {"cdd", 0, 1},
    {"ddd", 1, 1}, {"edd", 2, 1}, {"fdd", 3, 1}, {"gdd", 4, 1}, {"add", 5, 1}, {"bdd", 6, 1},
    {"cdb", 0, -1}, {"ddb", 1, -1}, {"edb", 2, -1}, {"fdb", 3, -1}, {"gdb", 4, -1}, {"adb", 5, -1},
    {"bdb", 6, -1}, {"ctqb", 0, -3}, {"dtqb", 1, -3}, {"etqb", 2, -3}, {"ftqb", 3, -3}, {"gtqb", 4, -3},
    {"atqb", 5, -3}, {"btqb", 6, -3}, {"ctqd", 0, 3}, {"dtqd", 1, 3}, {"etqd", 2, 3}, {"ftqd", 3, 3},
    {"gtqd", 4, 3}, {"atqd", 5, 3}, {"btqd", 6, 3}, {"cfhb", 0, -10}, {"dfhb", 1, -10}, {"efhb", 2, -10},
    {"ffhb", 3, -10}, {"gfhb", 4, -10}, {"afhb", 5, -10}, {"bfhb", 6, -10}, {"cfhd", 0, 10},
    {"dfhd", 1, 10}, {"efhd", 2, 10}, {"ffhd", 3, 10}, {"gfhd", 4, 10}, {"afhd", 5, 10}, {"bfhd", 6, 10},
    {"cshb", 0, -14}, {"dshb", 1, -14}, {"eshb", 2, -14}, {"fshb", 3, -14}, {"gshb", 4, -14},
    {"ashb", 5, -14}, {"bshb", 6, -14}, {"cshd", 0, 14}, {"dshd", 1, 14}, {"eshd", 2, 14}, {"fshd", 3, 14},
    {"gshd", 4, 14}, {"ashd", 5, 14}, {"bshd", 6, 14},
};

#define COUNT(table) (sizeof(table) / sizeof((table)[0]))

const sw_language sw_languages[] = {
    {"nederlands", nederlands, COUNT(nederlands)},
    {"english", english, COUNT(english)},
    {"deutsch", deutsch, COUNT(deutsch)},
    {"italiano", italiano, COUNT(italiano)},
    {"français", franais, COUNT(franais)},
    {"espanol", espanol, COUNT(espanol)},
    {"español", espanol, COUNT(espanol)},
    {"catalan", catalan, COUNT(catalan)},
    {"català", catalan, COUNT(catalan)},
    {"portugues", portugues, COUNT(portugues)},
    {"português", portugues, COUNT(portugues)},
    {"norsk", norsk, COUNT(norsk)},
    {"suomi", suomi, COUNT(suomi)},
    {"svenska", svenska, COUNT(svenska)},
    {"vlaams", vlaams, COUNT(vlaams)},
    {"arabic", arabic, COUNT(arabic)},
};

const size_t sw_language_count = COUNT(sw_languages);
