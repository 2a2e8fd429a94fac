package haywright.app.exchange.text;

import haywright.app.exchange.lab.Days;
import haywright.app.exchange.lab.Heading;
import haywright.app.exchange.lab.Ours;
import haywright.app.exchange.lab.Told;
import haywright.app.exchange.lab.Whose;
import haywright.app.exchange.line.TextLine;
import haywright.app.exchange.line.TextLine.Word;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** What the lines over a table say of the sample: label and value, several in a line. */
record Head(List<Field> fields) {
    /** @param from where its label begins @param to where its value ends */
    record Field(Told told, String value, int line, int from, int to) {
        /** With a part of its value; the rest of its words is then told nowhere else, and stays with the rest of the sheet. */
        private Field with(String part) {
            return part.equals(value) ? this : new Field(told, part, line, 0, 0);
        }
    }

    private static final Pattern MARKED_AS = Pattern.compile(
            "(?iu)\\b(?:bags?|samples?|stack|bales?|hay|feed|forage)\\s+(?:(?:that|which|was|were|is|you|you’ve|you've|have|had|came|in|we|got)\\s+){0,4}"
                    + "(?:marked|labell?ed|called|tagged|named|identified)\\s+(?:as\\s+|with\\s+)?"
                    + "(?:[\"“”„'‘’]([^\"“”„]{1,60}?)[\"“”’']"
                    + "|(?-i:(\\p{Lu}[\\p{L}\\p{N}#&/-]*(?: (?!(?:came|is|was|ran|tested|had|has|shows?|showed|arrived|and|which|that|we|at|comes)\\b)[\\p{L}\\p{N}#&/-]+){0,5})))");

    /** "Your core sample “North Stack”". */
    private static final Pattern QUOTED = Pattern.compile(
            "(?iu)\\b(?:samples?|bags?|stack|bales?|lot|hay|feed|forage),? [\"“”„]([^\"“”„]{1,60}?)[\"“”]");

    private static final Pattern LABEL = Pattern.compile(
            "(?<![\\p{L}\\p{N}-])(\\p{L}[\\p{L}\\p{N}./#'’-]*(?: (?:\\p{L}[\\p{L}\\p{N}./#'’-]*|#)){0,3}|#) ?[:=] *");
    /** "Lab No. 26-551", "Received 8/27/26": a label with what it tells behind it, and no sign between. */
    private static final Pattern PLAIN =
            Pattern.compile("((?:\\p{L}[\\p{L}./#'’-]*|#)(?: (?:\\p{L}[\\p{L}./#'’-]*|#)){0,3}) (.+)");

    private static final Pattern NO_NAME = Pattern.compile(
            "(?i)\\b(?:reports?|analys[ie]s|results?|certificate|invoice|hay|silage|straw|sample|minerals?|nutrients?|dear|summary|page|basis)\\b");

    private static final Pattern NUMBERED =
            Pattern.compile("(.*[^\\s,]),?\\s*[(\\[](\\p{L}[\\p{L} .]*(?:#|no\\.?)?) ?[:#]? ?(\\S*[0-9]\\S*)[)\\]]");

    private static final Pattern GREETS = Pattern.compile(
            "(?i)^(?:hi|hello|hey|howdy|greetings|good (?:morning|day|afternoon|evening)|morning|afternoon|evening|thanks|thank you)\\b");

    private static final Pattern HOUSE = Pattern.compile(
            "(?:(?:\\p{Lu}[\\p{L}.'’-]*|&|of|and|the),? ){1,7}(?iu:lab(?:s|oratory|oratories)?|testing|analytical|services?|assay|analytics|chemistry)(?:,? (?i:inc|llc|co|ltd)\\.?)?");

    private static final Pattern CALLS_ITSELF =
            Pattern.compile("(?i)\\b(?:laborator(?:y|ies)|laboratoire|labs?|analytical|testing)\\b");

    /** "Oat hay, draw 6 (lab no. 0419-1)": what a line over the figures of one sample calls it, and its number. */
    static List<Field> sample(TextLine line) {
        var whole = TextLine.join(line.words());
        var named = NUMBERED.matcher(whole.text());
        boolean isNumbered = named.matches()
                && Told.of(named.group(2))
                        .filter(told -> told == Told.NUMBER || told == Told.BAG)
                        .isPresent();
        var fields = new ArrayList<Field>();
        fields.add(new Field(
                Told.BAG, isNumbered ? named.group(1) : whole.text(), line.number(), whole.from(), whole.to()));
        if (isNumbered) {
            fields.add(new Field(Told.NUMBER, named.group(3), line.number(), whole.from(), whole.to()));
        }
        return fields;
    }

    /** The fields of one line: label and value in a cell, or a label in a cell and its values in the next ones. */
    static List<Field> of(TextLine line) {
        var fields = read(line);
        fields.replaceAll(
                field -> field.told.isDay() ? field.with(Days.in(field.value).orElse("")) : field);
        fields.removeIf(field -> field.value.isEmpty());
        called(line).ifPresent(fields::add);
        return fields;
    }

    /** With the name of a lot here, wherever it stands by itself between commas, colons or wide room. */
    static List<Field> of(TextLine line, Ours ours) {
        var fields = of(line);
        if (fields.stream().noneMatch(field -> field.told == Told.BAG)) {
            line.cells().stream()
                    .map(cell -> TextLine.join(cell).text())
                    .flatMap(cell -> Stream.of(cell.split("\\s*[,;:]\\s+")))
                    .map(part -> part.strip().replaceAll("[.,;]$", ""))
                    .filter(ours::hasLot)
                    .findFirst()
                    .ifPresent(lot -> fields.add(new Field(Told.BAG, lot, line.number(), 0, 0)));
        }
        return fields;
    }

    /** "The bag you marked “West stack”": what a sentence over the figures calls the sample. */
    private static Optional<Field> called(TextLine line) {
        var quoted = QUOTED.matcher(line.text());
        if (quoted.find()) {
            return Optional.of(new Field(Told.BAG, quoted.group(1).strip(), line.number(), 0, 0));
        }
        var found = MARKED_AS.matcher(line.text());
        if (!found.find()) {
            return Optional.empty();
        }
        int group = found.group(1) == null ? 2 : 1;
        return Optional.of(new Field(Told.BAG, found.group(group).strip(), line.number(), 0, 0));
    }

    /** "Reported   Nov 6, 2026", "Page   1 of 1": labels with a value each, and nothing over columns. */
    static boolean isField(TextLine line) {
        var isLabel = line.cells().stream()
                .map(cell -> TextLine.join(cell).text())
                .map(text ->
                        Told.of(text).isPresent() && Whose.of(List.of(text)).get(0) == Whose.UNSAID)
                .toList();
        boolean haveLabels = IntStream.range(0, isLabel.size())
                .allMatch(at -> isLabel.get(at) ? at + 1 < isLabel.size() : at > 0 && isLabel.get(at - 1));
        return isLabel.size() > 1 ? haveLabels : !of(line).isEmpty();
    }

    private static List<Field> read(TextLine line) {
        var fields = new ArrayList<Field>();
        Field open = null;
        for (var words : line.cells()) {
            var cell = TextLine.join(words);
            var label = Told.of(cell.text());
            if (label.isPresent()) {
                open = new Field(label.get(), "", line.number(), cell.from(), cell.to());
                continue;
            }
            int before = fields.size();
            labeled(cell, line, fields);
            if (fields.size() > before) {
                open = null;
            } else if (open != null
                    && open.told == Told.LABORATORY
                    && cell.text().matches("[(\\[].*[)\\]]")) {
                open = null; // a remark in brackets is nobody's name
            } else if (open != null) {
                fields.add(new Field(open.told, bare(cell.text()), line.number(), open.from, cell.to()));
            }
        }
        if (!fields.isEmpty()) { // beside a label that is known another needs no colon
            line.cells().stream().map(TextLine::join).forEach(cell -> named(cell, line, fields));
        }
        return fields;
    }

    private static void named(Word cell, TextLine line, List<Field> fields) {
        var plain = PLAIN.matcher(cell.text());
        if (!plain.matches() || fields.stream().anyMatch(f -> f.from >= cell.from() && f.from < cell.to())) {
            return;
        }
        for (var name = plain.group(1); !name.isEmpty(); name = name.replaceFirst(" ?\\S+$", "")) {
            if (Told.of(name).filter(Told.BAG::equals).isPresent()) {
                var value = cell.text().substring(name.length()).strip();
                fields.add(new Field(Told.BAG, value, line.number(), cell.from(), cell.to()));
                return;
            }
        }
    }

    private static void labeled(Word cell, TextLine line, List<Field> fields) {
        var text = cell.text();
        var found = LABEL.matcher(text);
        Told told = null;
        int label = 0;
        int value = 0;
        for (int at = 0; found.find(at); at = found.end()) {
            var next = longest(found.group(1));
            if (next == null) { // a label that nobody knows ends the value before it
                int end = found.end(1) - found.group(1).replaceFirst("^.* ", "").length();
                add(fields, told, line, cell.from() + label, text.substring(value, Math.max(value, end)), cell);
                told = null;
                continue;
            }
            int from = found.end(1) - next.length();
            add(fields, told, line, cell.from() + label, text.substring(value, told == null ? value : from), cell);
            told = Told.of(next).orElse(null);
            label = from;
            value = found.end();
        }
        if (told != null) {
            add(fields, told, line, cell.from() + label, text.substring(value), cell);
            return;
        }
        var plain = PLAIN.matcher(text);
        if (plain.matches()) {
            for (var name = plain.group(1); !name.isEmpty(); name = name.replaceFirst(" ?\\S+$", "")) {
                var kind = Told.of(name).orElse(null);
                var rest = text.substring(name.length()).strip();
                boolean fits = kind != null
                        && (kind.isDay()
                                ? Days.isDay(rest)
                                : (kind == Told.NUMBER || kind == Told.BAG) && rest.matches("\\S*[0-9]\\S*"));
                if (fits && kind != null) {
                    fields.add(new Field(kind, rest, line.number(), cell.from(), cell.to()));
                    return;
                }
            }
        }
    }

    private static void add(List<Field> fields, @Nullable Told told, TextLine line, int from, String value, Word cell) {
        var plain = bare(value);
        if (told != null && !plain.isEmpty()) {
            fields.add(new Field(told, plain, line.number(), from, Math.min(cell.to(), from + 1000)));
        }
    }

    /** Without the sign between it and its label, which may stand in a column of its own, and without what ends it. */
    private static String bare(String value) {
        return value.replaceAll("^(?:[:=]|[.…]+\\s)[\\s.…]*|[\\s,;]+$", "")
                .strip()
                .replaceFirst("^[\"“]([^\"“”]+)[\"”]$", "$1");
    }

    /** The longest end of these words that is a label: "to Date sampled" has "Date sampled". */
    private static @Nullable String longest(String words) {
        for (var left = words; ; left = left.substring(left.indexOf(' ') + 1)) {
            if (Told.of(left).isPresent()) {
                return left;
            }
            if (left.indexOf(' ') < 0) {
                return null;
            }
        }
    }

    /** What a column under this heading says of each sample. */
    static Optional<Told> tells(String heading) {
        return Told.of(heading.replaceAll("\\s+", " "));
    }

    /** A letterhead with wide room between its words. */
    static Optional<String> spacedName(TextLine line) {
        var words = line.words().stream()
                .takeWhile(word -> word.text().matches("[\\p{L}&.'’-]+"))
                .toList();
        return words.size() < 2
                ? Optional.empty()
                : Optional.of(String.join(
                                " ", words.stream().map(TextLine.Word::text).toList()))
                        .filter(Head::isName);
    }

    /** The first words of a sheet, each with a capital: who prints a report heads it with the own name. */
    static Optional<String> letterhead(String text) {
        var bare = text.replaceAll("[(\\[][^()\\[\\]]*[)\\]]", "")
                .replaceAll("^[^\\p{L}]+|[^\\p{L}.]+$", "")
                .replaceAll("\\s+", " ");
        boolean isOne = bare.matches("\\p{Lu}[\\p{L}&.,'’-]*(?: (?:\\p{Lu}[\\p{L}&.,'’-]*|&|of|and|the|for)){1,7}")
                && bare.length() < 80
                && !GREETS.matcher(bare).find()
                && !NO_NAME.matcher(bare).find()
                && Told.of(bare).isEmpty()
                && Heading.basis(bare.split(" (?=\\p{Lu})", 3)[0]).isEmpty()
                && Heading.basis(bare).isEmpty();
        return isOne ? Optional.of(bare) : Optional.empty();
    }

    /** Words with a capital that end in a trade: the name of a house, whatever else it is called. */
    static boolean isHouse(String line) {
        return HOUSE.matcher(line.strip()).matches();
    }

    static boolean isName(String line) {
        return CALLS_ITSELF.matcher(line).find()
                && line.length() < 80
                && Character.isUpperCase(line.charAt(0))
                && !line.contains(":")
                && !Told.isOfMany(line)
                && !Whose.isOfOthers(line)
                && Told.of(line).isEmpty();
    }

    /** Codes of the better kind that has one for each sample, in order. */
    List<String> codes(int samples) {
        var some = List.<String>of();
        for (var kind : List.of(Told.BAG, Told.NUMBER)) {
            var codes = all(kind).stream().distinct().toList();
            if (codes.size() == samples) {
                return codes;
            }
            some = some.isEmpty() ? codes : some;
        }
        return some;
    }

    List<String> all(Told kind) {
        return fields.stream().filter(f -> f.told == kind).map(Field::value).toList();
    }

    /** The value for one of several samples side by side; empty where it is not said. */
    String of(Told kind, int group, int groups) {
        var values = all(kind);
        return values.isEmpty() ? "" : values.size() == groups ? values.get(group) : values.get(0);
    }
}
