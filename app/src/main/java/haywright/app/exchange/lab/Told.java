package haywright.app.exchange.lab;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;

/**
 * What a label tells of a sample beside its figures: "Lab No.", "Date taken", "Sample ID". Of two that tell the same,
 * the earlier one is the better.
 */
public enum Told {
    BAG,
    NUMBER,
    LOT,
    LABORATORY,
    SAMPLED,
    RECEIVED,
    REPORTED,
    METHOD,
    /** For whom it was tested. */
    CUSTOMER,
    /** What the laboratory says of the sample as a whole. */
    REMARK,
    OTHER;

    private static final Set<String> LABORATORIES =
            Set.of("laboratory", "lab", "lab name", "laboratory name", "tested by", "analyzed by", "analysed by");
    private static final Set<String> LOTS = Set.of(
            "lot",
            "lot name",
            "lot id",
            "lot no",
            "lot identification",
            "lot ident",
            "lot description",
            "stack identification",
            "stack",
            "stack name",
            "feed",
            "feed name",
            "field",
            "field name",
            "hay lot",
            "feed type",
            "feed code",
            "hay type",
            "forage",
            "forage type",
            "material",
            "sample type",
            "product",
            "crop",
            "commodity",
            "matrix",
            "species",
            "type");
    private static final Set<String> BAGS = Set.of(
            "bag",
            "bag label",
            "bag id",
            "bag no",
            "sample",
            "sample id",
            "sample code",
            "sample name",
            "sample description",
            "sample desc",
            "sample identification",
            "sample ident",
            "sample no",
            "sample label",
            "sample info",
            "customer sample id",
            "customer sample",
            "client sample id",
            "client sample",
            "customer id",
            "client id",
            "your sample",
            "your id",
            "your no",
            "your reference",
            "your ref",
            "field id",
            "field code",
            "specimen",
            "specimen id",
            "identification",
            "description",
            "desc",
            "what",
            "label",
            "mark",
            "marks",
            "id");
    /** What the sender calls it: "client ref", "your mark", "grower's sample description". */
    private static final Pattern CALLED = Pattern.compile(
            "(?:your|clients?|customers?|growers?|producers?|senders?|submitters?|owners?|ranch|farm)(?:['’]s)?(?: own)?"
                    + "(?: (?:sample|bag|lot|hay|feed|forage|field)(?: (?:id|no|ref|reference|code|mark|name|label|tag|desc|description|ident|identification))?"
                    + "| (?:ref|reference|code|mark|marks|marking|label|tag|name|desc|description|ident|identification)(?: (?:for|of|on) (?:it|this|the (?:sample|bag|lot|hay|feed)))?)"
                    + "|(?:what |name )?you (?:call|called|marked|named)(?: (?:it|the (?:sample|bag|lot|hay|feed)))?"
                    + "|(?:bag|sample|lot|stack|bale|hay|feed|forage)(?:['’]s)? (?:mark|marks|marking|tag|label|called|as marked|marked)|marked(?: as)?|labell?ed(?: as)?");

    private static final Pattern NUMBERED = Pattern.compile(
            "(?:(?:lab(?:oratory)?|our|report|log|work order|order|case|accession|submission)(?: sample)?(?: id)? ?(?:no|id|ref|reference|code)?|reference|ref|ref no|no)");
    private static final Pattern DATED =
            Pattern.compile("(?:date|day|dt)? ?(?:(?:of|was|sample|samples) )*(%s)(?: (?:on|date|day|by lab|at lab))?");
    private static final Pattern SAMPLED_ON =
            dated("sampled|sample|sampling|taken|collected|collection|cored|drawn|sample taken|sample collected");
    private static final Pattern RECEIVED_ON = dated("received|receipt|rec'?d|rcvd|arrived|arrival|in");
    private static final Pattern REPORTED_ON = dated(
            "reported|rept'?d|rep'd|rpt'?d|report|issued|issue|completed|completion|printed|analysis|analyzed|analysed|tested|results?|finished|mailed|out|sent");
    private static final Set<String> METHODS = Set.of(
            "method", "methods", "analysis method", "procedure", "test method", "technique", "analyzed by method");
    private static final Pattern CUSTOMERS = Pattern.compile(
            "(?:(?:customer|client|grower|producer|owner|ranch|farm)(?:['’]?s)?(?: name)?|account (?:name|holder)|(?:submitted|sent|owned) (?:by|for)|submitter|sender|sold to|bill(?:ed)? to)");

    private static final Pattern REMARKS = Pattern.compile(
            "(?:(?:lab(?:oratory)?|result|sample|report|test|analyst|qc) )?(?:remarks?|notes?|comments?|status|disposition|messages?)|sample condition|condition(?: on receipt)?|result (?:valid|usable)|validity");

    private static final Set<String> OTHERS = Set.of(
            "account",
            "account no",
            "acct",
            "acct no",
            "customer no",
            "client no",
            "grower id",
            "producer id",
            "owner id",
            "ranch id",
            "farm id",
            "account id",
            "sampled by",
            "taken by",
            "sampler",
            "cutting",
            "cut",
            "variety",
            "phone",
            "fax",
            "tel",
            "email",
            "e-mail",
            "mail",
            "web",
            "address",
            "page",
            "pages",
            "invoice",
            "invoice no",
            "county",
            "state",
            "city",
            "po",
            "po no",
            "purchase order",
            "subject",
            "from",
            "to",
            "cc",
            "attn",
            "package",
            "test package",
            "basis",
            "copy",
            "copies",
            "harvest",
            "harvested",
            "harvest date",
            "weight",
            "name",
            "forage lot");

    private static final Pattern OF_MANY = Pattern.compile(
            "(?i)(?:average|avg\\.?|mean|median|typical|usual|normal|min(?:imum)?|max(?:imum)?|range|sd|std\\.?|goal|target|count"
                    + "|(?:(?:lab(?:oratory)?|method|practical|lower)\\s+)?(?:reporting|detection|quantitation|quantification)\\s+(?:limits?|level)"
                    + "|limits?(?: of (?:detection|quantitation|quantification|reporting))?|mdl|rdl|pql|lod|loq|rl|methods?|units?|uncertainty|blank|control|check(?=$| sample| standard)|qc|quality control"
                    + "|(?:season|seasonal|lab(?:oratory)?|house|in-house|internal|state|county|area|regional|national|industry|[0-9]+[- ]year) (?:average|avg\\.?|mean|median|norm|standard|control|check))(?![\\p{L}\\p{N}]).*");

    private static final Pattern EARLIER = Pattern.compile(
            "(?i)[(\\[]?(?:your |our |the |from )?(?:last|previous|prev\\.?|prior|past)[ -](?:year|yr\\.?|season|report|test|result|sample|time|fall|winter|spring|summer)s?(?![\\p{L}]).*");

    private static final Pattern REPLICATE = Pattern.compile(
            "(?i)(?:rep(?:licate|eat)?s?|runs?|dup(?:licate)?s?|trial|reading|aliquot)\\.?\\s*(?:no\\.?|number|#)?\\s*(?:[0-9]{1,2}|[a-d])?");
    private static final Pattern MEAN = Pattern.compile("(?i)(?:mean|average|avg\\.?)(?: result| value)?");

    /** In a sentence, or over a column: figures of other samples, or what they should be. */
    private static final Pattern OF_OTHERS = Pattern.compile(
            "(?i)\\b(?:average|mean|median|typical(?:ly)?|usual(?:ly)?|normal(?:ly)?|range|compar\\w+|(?:your )?last (?:year|yr|time|sample|report|test|fall|winter|spring|summer|month|week|season|cutting|result)|on file|previous(?:ly)?|prev\\.? (?:year|results?|test|sample|report|value)|expect\\w*|goal|target"
                    + "|should|would|could|at least|at most|more than|less than ideal|standard|guide\\w*|guarantee\\w*|recommend\\w*|other samples?)\\b");

    private static Pattern dated(String words) {
        return Pattern.compile(DATED.pattern().formatted(words));
    }

    /** What a label alone tells; without regard to case, to the colon behind it and to how "number" is written. */
    public static Optional<Told> of(String label) {
        var key = key(label);
        if (key.isEmpty()) {
            return Optional.empty();
        }
        if (label.indexOf('/') >= 0) { // in two languages
            var sides = Heading.sides(label);
            for (var side : sides.subList(1, sides.size())) {
                var told = of(side);
                if (told.isPresent() && side.strip().length() > 3) {
                    return told;
                }
            }
        }
        if (LABORATORIES.contains(key)) {
            return Optional.of(LABORATORY);
        }
        if (CUSTOMERS.matcher(key).matches()) {
            return Optional.of(CUSTOMER);
        }
        if (BAGS.contains(key) || CALLED.matcher(key).matches()) {
            return Optional.of(BAG);
        }
        if (LOTS.contains(key)) {
            return Optional.of(LOT);
        }
        if (METHODS.contains(key)) {
            return Optional.of(METHOD);
        }
        if (REMARKS.matcher(key).matches()) {
            return Optional.of(REMARK);
        }
        if (OTHERS.contains(key)) {
            return Optional.of(OTHER);
        }
        if (NUMBERED.matcher(key).matches()
                && !Set.of("lab", "laboratory", "our", "report", "order", "case")
                        .contains(key)) {
            return Optional.of(NUMBER);
        }
        if (Set.of("date", "day").contains(key)) {
            return Optional.of(REPORTED);
        }
        if (!Set.of("sample", "in", "analysis", "result", "results", "report", "sample taken by")
                .contains(key)) {
            for (var one : List.of(SAMPLED, RECEIVED, REPORTED)) {
                var pattern = one == SAMPLED ? SAMPLED_ON : one == RECEIVED ? RECEIVED_ON : REPORTED_ON;
                if (pattern.matcher(key).matches()) {
                    return Optional.of(one);
                }
            }
        }
        return Optional.empty();
    }

    /** In place of a sample's name: figures of many samples, of an earlier report, or of the way they were measured. */
    public static boolean isOfMany(String name) {
        return OF_MANY.matcher(name.strip()).matches()
                || EARLIER.matcher(name.strip()).matches();
    }

    /** In place of a sample's name "N" may be how many there are: then all its figures are one whole number. */
    public static boolean isCount(String name, List<String> figures) {
        return name.strip()
                        .matches(
                                "(?i)n\\.?|n ?=.*|(?:no\\.?|number|#)(?: of)? (?:samples?|tests?|bags?)|samples?|total")
                && !figures.isEmpty()
                && figures.stream().allMatch(figure -> figure.matches("[0-9]{1,4}") && figure.equals(figures.get(0)));
    }

    /** Whether a sentence or a heading speaks of other figures than those of the sample. */
    public static boolean speaksOfOthers(String text) {
        return OF_OTHERS.matcher(text).find();
    }

    /** One of several measurements of one sample, by its column's heading. */
    public static boolean isReplicate(String heading) {
        return REPLICATE.matcher(heading.strip()).matches();
    }

    /** What such measurements come to together. */
    public static boolean isMean(String words) {
        return MEAN.matcher(words.strip()).matches();
    }

    /** Whether it is a day. */
    public boolean isDay() {
        return this == SAMPLED || this == RECEIVED || this == REPORTED;
    }

    private static String key(String label) {
        // "SampleNo", "ClientID"
        return Heading.key(label.replaceAll("(?<=\\p{Ll})(?=\\p{Lu})", " "))
                .replaceAll("\\s*[:=]+$", "")
                .replaceAll("(?<=\\s|^)(?:no\\.?|number|num\\.?|nr\\.?|nbr\\.?|#)(?=\\s|$)|#$", " no ")
                .replaceAll("[.,/]", " ")
                .replaceAll("\\s+", " ")
                .strip();
    }
}
