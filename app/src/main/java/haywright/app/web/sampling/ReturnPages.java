package haywright.app.web.sampling;

import haywright.app.exchange.sheet.SheetFile;
import haywright.app.web.Ask;
import haywright.app.web.Findings;
import haywright.app.web.Form;
import haywright.app.web.Page;
import haywright.app.web.Routes;
import haywright.app.words.Show;
import haywright.ranch.Sampling;
import haywright.sampling.Taken;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** A sheet that came back from a phone, as a line of text or a file. */
public final class ReturnPages {
    public static final Ask LINE =
            Ask.text("line", "The line, or the whole file", "Its last letter catches typing mistakes.");

    private static final String LIST = "haywright/app/web/sampling/take.jte";
    private static final int MOST_BYTES = 64 * 1024;
    private static final int MOST_NAMED = 3;
    /** Letters of a sheet's code. */
    private static final int CODE = 6;

    private ReturnPages() {}

    static void routes(Routes on) {
        on.post("take/line", ReturnPages::line);
        on.post("take/file", ReturnPages::file);
    }

    private static void line(Page page) {
        var form = page.posted("take");
        takeIn(page, form, form.text(LINE, "Paste the line, or the whole file."));
    }

    private static void file(Page page) throws IOException {
        var form = page.posted("take");
        form.text(LINE);
        var file = page.http().uploadedFile("file");
        if (file == null || file.size() == 0) {
            form.refuse(LINE.name(), "", "no file was chosen", "Choose the file the phone saved.");
            reject(page, form, null);
            return;
        }
        if (file.size() > MOST_BYTES) {
            form.refuse(
                    LINE.name(), file.filename(), "too large for a sheet’s file", "Choose the file the phone saved.");
            reject(page, form, null);
            return;
        }
        try (var in = file.content()) {
            takeIn(page, form, new String(in.readNBytes(MOST_BYTES), StandardCharsets.UTF_8));
        }
    }

    private static void reject(Page page, Form form, @Nullable Sampling sampling) {
        page.reject(form, LIST, TakePages.list(page, form, sampling));
    }

    private static void takeIn(Page page, Form form, String text) {
        var line = SheetFile.line(text);
        if (WeighPages.isLine(line)) {
            WeighPages.takeIn(page, form, line);
            return;
        }
        if (line.matches("(?i)F[A-Z0-9]{5}-.*")) {
            form.refuse(
                    LINE.name(),
                    line.substring(0, CODE),
                    "this line is of a week that was fed",
                    "Paste it under Winter book, Enter a week.");
            reject(page, form, null);
            return;
        }
        var read = form.buildFrom(LINE, () -> SheetFile.read(text));
        var sampling = read.flatMap(r -> sheet(page, form, r));
        if (sampling.isPresent()) {
            var before = sampling.get().taken();
            var now = read.orElseThrow().taken();
            if (before == null) {
                SheetPages.dated(page, form, LINE, sampling.get(), now.on());
            }
            if (!form.hasProblems()) {
                SheetPages.keep(page, form, sampling.get(), before == null ? now : before.withWordsOf(now));
                return;
            }
        }
        reject(page, form, sampling.orElse(null));
    }

    /** The sheet that a line speaks of. The same line twice changes nothing; another one for the same sheet is refused. */
    private static Optional<Sampling> sheet(Page page, Form form, Taken.Returned back) {
        var found = page.ranch().samplings().values().stream()
                .filter(s -> s.code().equals(back.sheet()))
                .findFirst();
        if (found.isEmpty()) {
            form.refuse(
                    LINE.name(),
                    back.sheet(),
                    "no sheet with this code is on this ranch",
                    "Check whether it is another ranch’s.");
            return found;
        }
        var sampling = found.get();
        if (back.taken().cores().size() != sampling.picks().size()) {
            form.refuse(
                    LINE.name(),
                    back.taken().cores().size() + " places",
                    "sheet %s has %d"
                            .formatted(sampling.code(), sampling.picks().size()),
                    "Check whether the sheet was made again since.");
            return found;
        }
        var before = sampling.taken();
        var apart = before == null ? List.<String>of() : apart(before, back.taken());
        if (before != null && !apart.isEmpty()) {
            form.refuse(
                    LINE.name(),
                    back.sheet(),
                    "this sheet already came back on %s with other figures: %s"
                            .formatted(Show.date(before.on()), String.join("; ", apart)),
                    "Change it on the sheet’s page.");
        }
        return found;
    }

    /** Where the two differ. A line brings no words and only the letters of a name. */
    private static List<String> apart(Taken before, Taken now) {
        var apart = new ArrayList<String>();
        if (!before.on().equals(now.on())) {
            apart.add("the day was %s and is %s here".formatted(Show.date(before.on()), Show.date(now.on())));
        }
        if (!initials(before.by()).equals(initials(now.by()))) {
            apart.add("%s took it, and %s here".formatted(Findings.shown(before.by()), Findings.shown(now.by())));
        }
        int more = 0;
        for (int i = 0; i < now.cores().size(); i++) {
            var was = i < before.cores().size() ? before.cores().get(i) : Integer.valueOf(0);
            if (!was.equals(now.cores().get(i)) && ++more <= MOST_NAMED) {
                apart.add("number %d had %d and has %d here"
                        .formatted(i + 1, was, now.cores().get(i)));
            }
        }
        if (more > MOST_NAMED) {
            apart.add("%d more differ".formatted(more - MOST_NAMED));
        }
        return apart;
    }

    private static String initials(String by) {
        return by.toUpperCase(Locale.ROOT).replaceAll("[^A-Z0-9]", "");
    }

    /** A line carries a day from a phone, whose clock may be wrong. */
    static void dated(Page page, Form form, LocalDate on) {
        if (on.isAfter(page.today())) {
            form.refuse(
                    LINE.name(),
                    Show.date(on),
                    "this day is in the future; today is " + Show.date(page.today()),
                    "Check the phone’s clock, or enter the numbers on the lot’s or group’s page.");
        }
    }
}
