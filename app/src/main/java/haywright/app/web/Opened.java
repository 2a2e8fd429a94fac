package haywright.app.web;

import haywright.workings.Line;
import haywright.workings.Source;
import haywright.workings.Worked;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * What the workings of one page have said so far. Each piece of work is told in full once, and each source is written
 * out once, under the number that stands behind every line it covers: the same intake can stand behind ten figures, and
 * told ten times it buries them.
 */
public final class Opened {
    private final Set<String> told = new HashSet<>();
    private final List<String> sources = new ArrayList<>();

    /** Whether it has not been told yet; from now on it has. */
    public boolean first(Worked worked) {
        return told.add(worked.lines().stream().map(Opened::key).collect(Collectors.joining("\n")));
    }

    /** By what it says and not by which object says it: works are made anew at every call. */
    private static String key(Line line) {
        return line.symbol() + "=" + line.formula() + "=" + line.value()
                + line.inputs().stream()
                        .map(input -> input.symbol() + "=" + input.value())
                        .toList();
    }

    /** The number of a source, from 1. */
    public int number(Source source) {
        var known = source.known().words();
        var cite = source.cite().equals(known) ? known : source.cite() + " (" + known + ")";
        int at = sources.indexOf(cite);
        if (at < 0) {
            sources.add(cite);
            return sources.size();
        }
        return at + 1;
    }

    /** In the order of their numbers. */
    public List<String> sources() {
        return List.copyOf(sources);
    }
}
