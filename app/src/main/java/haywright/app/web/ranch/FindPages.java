package haywright.app.web.ranch;

import haywright.app.web.Page;
import haywright.app.web.Routes;
import haywright.app.words.DateWords;
import haywright.app.words.Show;
import haywright.outlook.NextDate;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** One box that finds what is on a ranch: lots, groups, feeds to buy, reports, fields, signed letters and dates. */
public final class FindPages {
    private FindPages() {}

    static void routes(Routes on) {
        on.get("find", page -> page.show("haywright/app/web/ranch/find.jte", view(page)));
    }

    /** @param looked for, as typed; empty for nothing yet */
    public record View(String looked, List<Found> found) {}

    /**
     * @param kind what it is, in a word
     * @param path of its page on the ranch; empty where it has none
     * @param about what else is looked through and shown
     */
    public record Found(String kind, String name, String about, String path) {
        /** Every word is in it, in any order. */
        boolean has(List<String> words) {
            var all = (kind + " " + name + " " + about).toLowerCase(Locale.US);
            return words.stream().allMatch(all::contains);
        }
    }

    private static View view(Page page) {
        var typed = page.http().queryParam("q");
        var looked = typed == null ? "" : typed.strip();
        var words = Arrays.stream(looked.toLowerCase(Locale.US).split("\\s+"))
                .filter(word -> !word.isEmpty())
                .toList();
        var found = words.isEmpty()
                ? List.<Found>of()
                : all(page).stream().filter(one -> one.has(words)).toList();
        return new View(looked, found);
    }

    private static List<Found> all(Page page) {
        var ranch = page.ranch();
        var all = new ArrayList<Found>();
        for (var lot : ranch.lots().values()) {
            var made = lot.madeOn() == null ? "" : "put up " + Show.date(lot.madeOn());
            all.add(new Found(
                    "Lot",
                    lot.name(),
                    joined(lot.feedClass().words(), lot.where(), lot.cutting(), made, lot.notes()),
                    "lots/" + lot.id()));
        }
        for (var group : ranch.groups().values()) {
            all.add(new Found(
                    "Group",
                    group.name(),
                    joined(
                            "%s %s"
                                    .formatted(
                                            Show.number(group.head(), 0),
                                            group.animals().words()),
                            group.breed()),
                    "herd/" + group.id()));
        }
        for (var feed : ranch.feedsForSale().values()) {
            all.add(new Found(
                    "Feed to buy",
                    feed.name(),
                    joined(feed.feedClass().words(), Show.price(feed.price()), feed.delivery()),
                    "feeds/" + feed.id()));
        }
        for (var report : ranch.reports().values()) {
            var lot = ranch.lots().get(report.lot());
            all.add(new Found(
                    "Report",
                    report.sampleCode().isEmpty() ? report.laboratory() : report.sampleCode(),
                    joined(
                            lot == null ? "" : lot.name(),
                            report.laboratory(),
                            day("sampled", report.sampled()),
                            day("reported", report.reported())),
                    "reports/lot/" + report.lot()));
        }
        for (var field : ranch.fields().values()) {
            all.add(new Found("Field", field.name(), "", "take/fields/" + field.id() + "/change"));
        }
        for (var signed : ranch.signed().values()) {
            var group = ranch.groups().get(signed.letter().group());
            all.add(new Found(
                    "Signed letter",
                    group == null ? "a group no longer here" : group.name(),
                    joined(Show.date(signed.on()), signed.by()),
                    "letter/" + signed.letter().group() + "/signed/" + signed.id()));
        }
        for (var date : NextDate.all(ranch, page.today())) {
            all.add(new Found(
                    "Date", DateWords.title(date), joined(DateWords.when(date), String.join("; ", date.who())), ""));
        }
        return all;
    }

    private static String day(String what, @Nullable LocalDate day) {
        return day == null ? "" : what + " " + Show.date(day);
    }

    private static String joined(String... parts) {
        return String.join(
                ", ", Stream.of(parts).filter(part -> !part.isBlank()).toList());
    }
}
