package haywright.app.web;

import haywright.app.document.Fingerprint;
import haywright.app.document.RanchDocument;
import haywright.ranch.Ranch;
import haywright.workings.Refused;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * The revision that a form was made from, as the form carries it: its number, and a print of what the ranch was then. After
 * an older copy of the database was put in place its numbers are given again, to other content.
 *
 * @param print empty where a script sent a number alone
 */
record Made(long rev, String print) {
    private static final Pattern MARK = Pattern.compile("([1-9][0-9]{0,14})(?:-([0-9a-f]{12}))?");

    private static final int LONG = 12;

    private static final Map<UUID, Printed> PRINTED = KeptBooks.eldestDropped();

    /** @param ranch that very one, as a revision is read once */
    private record Printed(Ranch ranch, String print) {}

    static String mark(Ranch ranch, long rev) {
        return rev + "-" + print(ranch);
    }

    @SuppressWarnings("ReferenceEquality")
    private static String print(Ranch ranch) {
        synchronized (PRINTED) {
            var known = PRINTED.get(ranch.id());
            if (known != null && known.ranch() == ranch) {
                return known.print();
            }
        }
        var print = Fingerprint.sha256(new RanchDocument().tree(ranch)).substring(0, LONG);
        synchronized (PRINTED) {
            PRINTED.put(ranch.id(), new Printed(ranch, print));
        }
        return print;
    }

    /** Null for what no form of ours carries. */
    static @Nullable Made of(List<String> typed) {
        var mark = MARK.matcher(typed.isEmpty() ? "" : typed.get(0));
        return mark.matches()
                ? new Made(Long.parseLong(mark.group(1)), mark.group(2) == null ? "" : mark.group(2))
                : null;
    }

    /** Whether the ranch of a page ever was so. */
    boolean isOf(Page page) {
        if (rev > page.rev()) {
            return false;
        }
        Optional<Ranch> then = rev == page.rev()
                ? Optional.of(page.ranch())
                : page.desk().store().ranches().at(page.ranch().id(), rev);
        return print.isEmpty()
                || then.filter(ranch -> print(ranch).equals(print)).isPresent();
    }

    /** @throws Refused where a form was made from what this ranch never was */
    static void check(Page page, String name) {
        var typed = page.http().formParams(name);
        var made = of(typed);
        if (!typed.isEmpty() && (made == null || !made.isOf(page))) {
            throw new Refused(
                    name,
                    made == null ? typed.get(0) : "version " + made.rev(),
                    made == null
                            ? "not a version of this ranch"
                            : "this form was opened before an older copy of the ranch was restored",
                    made == null
                            ? "Reload the page and send it from there."
                            : "Compare each box with what is on the ranch now, then save.");
        }
    }
}
