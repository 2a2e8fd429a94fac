package haywright.sampling;

import haywright.workings.Problem;
import haywright.workings.Refused;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * What was really taken, as it came back from the field.
 *
 * @param by who took it, initials or a name
 * @param cores from each unit of the sheet, in its order; 0 where none was taken
 * @param differed what was not as planned, in the taker's words; may be empty
 * @param photos names of pictures; may be empty
 */
public record Taken(LocalDate on, String by, List<Integer> cores, String differed, List<String> photos) {
    /** One sign a unit on the line of text: 0 to 9, then A to Z. */
    private static final int MOST_CORES = 35;

    public Taken {
        var problems = new ArrayList<Problem>();
        if (by.isBlank()) {
            problems.add(new Problem("by", "", "it has no name of who took it", "Enter initials."));
        }
        if (cores.isEmpty() || cores.stream().allMatch(c -> c == 0)) {
            problems.add(
                    new Problem("cores", "none", "at least one core was taken", "Leave the sheet open if none was."));
        }
        for (var core : cores) {
            if (core < 0 || core > MOST_CORES) {
                problems.add(new Problem(
                        "cores",
                        core + " cores",
                        "from one unit come 0 to " + MOST_CORES,
                        "Check for an extra digit."));
            }
        }
        Refused.unlessEmpty(problems);
        cores = List.copyOf(cores);
        photos = List.copyOf(photos);
    }

    /** Units that something was taken from. */
    public int units() {
        return (int) cores.stream().filter(c -> c > 0).count();
    }

    /** The plan as it was really followed. */
    public Design design(int analyses) {
        return Design.of(cores, analyses);
    }

    /**
     * Of one of two composites: every other unit in the order of the sheet.
     *
     * @param first 0 for A, 1 for B
     * @return empty where nothing went into it
     */
    public Optional<Taken> everyOther(int first) {
        var own = new ArrayList<Integer>();
        for (int i = first; i < cores.size(); i += 2) {
            own.add(cores.get(i));
        }
        return own.stream().allMatch(c -> c == 0)
                ? Optional.empty()
                : Optional.of(new Taken(on, by, own, differed, photos));
    }

    /**
     * The same, with the words and photos of another that came back of it: a line of text holds neither, and the file that
     * follows it does. Nothing that is there already is replaced.
     */
    public Taken withWordsOf(Taken other) {
        var named = new LinkedHashSet<>(photos);
        named.addAll(other.photos);
        var words = differed.contains(other.differed)
                ? differed
                : differed.isBlank() ? other.differed : differed + "; " + other.differed;
        return new Taken(on, by, cores, words, List.copyOf(named));
    }

    /** What came back: which sheet, and what was taken. */
    public record Returned(String sheet, Taken taken) {}

    /**
     * One line of text for a message: sheet, day, who, cores, check letter. Words and photos do not fit on it.
     *
     * @param sheet the sheet's code
     */
    public String line(String sheet) {
        var all = new StringBuilder();
        for (var core : cores) {
            all.append(Character.toUpperCase(Character.forDigit(core, 36)));
        }
        var who = by.toUpperCase(Locale.ROOT).replaceAll("[^A-Z0-9]", "");
        return CheckLetter.add("%s-%s-%s-%s".formatted(sheet, SheetDay.write(on), who.isEmpty() ? "X" : who, all));
    }

    /** @throws Refused when a character was changed, or the line is none of ours */
    public static Returned read(String line) {
        var parts = CheckLetter.read(line).split("-");
        if (parts.length != 4 || !parts[1].matches("[0-9]{6}")) {
            throw strange(line);
        }
        var cores = new ArrayList<Integer>();
        for (char c : parts[3].toCharArray()) {
            cores.add(Character.digit(c, 36));
        }
        try {
            var on = SheetDay.read(parts[1]);
            return new Returned(parts[0], new Taken(on, parts[2], cores, "", List.of()));
        } catch (DateTimeException e) {
            throw strange(line);
        }
    }

    private static Refused strange(String line) {
        return new Refused(
                "line",
                line.strip(),
                "it is complete, but not a line from a field sheet: sheet, day, who, cores",
                "It may be a bag code.");
    }
}
