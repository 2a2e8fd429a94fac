package haywright.app.web.ranch;

import haywright.app.report.FeedLetter;
import haywright.app.store.Drafts;
import haywright.app.web.Ask;
import haywright.app.web.Form;
import haywright.app.web.Option;
import haywright.app.web.Page;
import haywright.app.web.Routes;
import haywright.app.web.Sent;
import haywright.app.web.bench.BenchView;
import haywright.app.web.form.JsonForm;
import haywright.app.web.trail.ToDo;
import haywright.app.words.Show;
import haywright.cattle.RequirementSystem;
import haywright.cattle.herd.Group;
import haywright.outlook.DaysOfFeed;
import haywright.outlook.NextDate;
import haywright.quantity.Quantity;
import haywright.ranch.NextWinter;
import haywright.ranch.Ranch;
import io.javalin.http.NotFoundResponse;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/** The home of a ranch and its settings. */
public final class RanchPages {
    private static final String OUTFIT = "haywright/app/web/ranch/outfit.jte";
    private static final String WINTER = "haywright/app/web/ranch/lastWinter.jte";
    private static final String RANCH = "haywright/app/web/ranch/names.jte";
    private static final int LONGEST = 60;
    /** Sent by the button that throws a draft away: the form it is of. */
    public static final String LEFT = "form";

    /** Beside it: what was listed, by its print. */
    public static final String PRINT = "print";

    public static final String FORGET = "unfinished/forget";
    private static final String ASIDE = "drafts/";
    private static final String NEXT = "haywright/app/web/ranch/nextWinter.jte";

    public static final Ask NAME = Ask.text("name", "Name of the ranch for the new winter", "");

    private RanchPages() {}

    public static void routes(Routes on) {
        on.get("", page -> page.show("haywright/app/web/ranch/home.jte", home(page)));
        on.get("settings", page -> page.show("haywright/app/web/ranch/settings.jte", settings(page.ranch())));
        on.get(
                "settings/ranch",
                page -> page.show(
                        RANCH, view(page, page.form("settings/ranch", () -> SettingsForms.known(page.ranch())))));
        on.post("settings/ranch", RanchPages::saveRanch);
        on.get(
                "settings/outfit",
                page -> page.show(
                        OUTFIT,
                        view(
                                page,
                                page.form(
                                        "settings/outfit",
                                        () -> SettingsForms.OUTFIT.known(
                                                page.ranch().outfit())))));
        on.post("settings/outfit", RanchPages::saveOutfit);
        on.get(
                "settings/last-winter",
                page -> page.show(
                        WINTER,
                        view(
                                page,
                                page.form(
                                        "settings/last-winter",
                                        () -> SettingsForms.LAST_WINTER.known(
                                                page.ranch().lastWinter())))));
        on.post("settings/last-winter", RanchPages::saveLastWinter);
        FindPages.routes(on);
        WeatherPages.routes(on);
        on.get("export", RanchPages::export);
        on.get(
                ASIDE + "{aside}",
                page -> page.http()
                        .contentType("text/plain; charset=utf-8")
                        .result(aside(page).fields()));
        on.post(ASIDE + "{aside}", page -> {
            page.desk().store().drafts().throwAway(page.ranch().id(), aside(page));
            Page.leave(page.http(), page.at(""));
        });
        on.post(FORGET, page -> {
            var drafts = page.desk().store().drafts();
            var form = String.valueOf(page.http().formParam(LEFT));
            var fields = drafts.get(page.ranch().id(), form);
            if (Drafts.print(fields).equals(page.http().formParam(PRINT))) { // and not what was typed into it since
                drafts.clear(page.ranch().id(), form, fields);
            }
            Page.leave(page.http(), page.at(""));
        });
        on.get("archive", page -> page.show("haywright/app/web/ranch/archive.jte", page.ranch()));
        on.post("archive", RanchPages::archive);
        on.get(
                "next-winter",
                page -> page.show(NEXT, page.form("next-winter", () -> Map.of(NAME.name(), nextName(page)))));
        on.post("next-winter", RanchPages::carry);
    }

    /**
     * @param waits what every step that is not done waits for, in walking order
     * @param feed how long the hay lasts; empty where nothing is known of it
     * @param fed of the groups that a letter is kept of
     * @param left forms that somebody left unfinished
     * @param damaged what is left of earlier ones that cannot be read; their paths show it as it is
     */
    public record Home(
            List<ToDo> waits,
            Optional<DaysOfFeed> feed,
            List<Fed> fed,
            List<NextDate> dates,
            List<Left> left,
            List<Left> damaged) {}

    /**
     * What a kept letter says to feed a group.
     *
     * @param says {@code 19 lb Meadow hay}, one a feed; empty where it says nothing to go by
     * @param why it says nothing; empty where it does
     * @param path of what to do about that. @param act in words
     */
    public record Fed(Group group, List<String> says, String why, String path, String act) {
        /**
         * None where no group has anything yet.
         *
         * @param atHand the bench's line of a group, where it is worked out: this page waits for no ration
         */
        static List<Fed> of(Ranch ranch, Function<Group, Optional<String>> atHand) {
            var all = ranch.groups().values().stream()
                    .map(group -> Optional.ofNullable(ranch.letters().get(group.id()))
                            .map(letter -> of(new FeedLetter(ranch, group, letter)))
                            .or(() -> atHand.apply(group).map(says -> new Fed(group, List.of(says), "", "", "")))
                            .orElseGet(() -> bench(group, "No letter yet.")))
                    .toList();
            return ranch.letters().isEmpty() && all.stream().allMatch(one -> one.says.isEmpty()) ? List.of() : all;
        }

        private static Fed of(FeedLetter letter) {
            if (letter.isStale()) {
                return new Fed(
                        letter.group(),
                        List.of(),
                        "The letter is out of date.",
                        "letter/" + letter.group().id(),
                        "Work it out again");
            }
            var says = letter.letter().table().stream()
                    .map(row -> row.aHead() + " " + row.feed())
                    .toList();
            return says.isEmpty()
                    ? bench(letter.group(), "There is no ration.")
                    : new Fed(letter.group(), says, "", "", "");
        }

        private static Fed bench(Group group, String why) {
            return new Fed(group, List.of(), why, "bench/" + group.id(), "See what to feed");
        }
    }

    /**
     * @param path of the form's page on the ranch
     * @param form that it was typed into, as a draft of it is called
     * @param print of what was typed
     */
    public record Left(String path, String words, String form, String print) {}

    /** Lines of what is set, by form. */
    public record SettingsView(List<Line> ranch, List<Line> weather, List<Line> outfit, List<Line> lastWinter) {}

    public record Line(String what, String value) {}

    public record FormView(Form form, List<Option> systems) {}

    private static Home home(Page page) {
        var drafts = page.desk().store().drafts();
        var left = drafts.waiting(page.ranch().id()).stream()
                .map(path -> left(path, drafts.get(page.ranch().id(), path)))
                .toList();
        var damaged = drafts.aside(page.ranch().id()).stream()
                .map(aside -> new Left(
                        ASIDE + aside.id(), left(aside.form(), Map.of()).words(), aside.form(), ""))
                .toList();
        return new Home(
                ToDo.of(page.ranch(), page.book().isPresent()),
                DaysOfFeed.of(page.yard()),
                Fed.of(
                        page.ranch(),
                        group -> page.offersAtHand(group).map(BenchView::row).map(row -> row.says())),
                NextDate.all(page.ranch(), page.today()),
                left,
                damaged);
    }

    private static Drafts.Aside aside(Page page) {
        return page.desk().store().drafts().aside(page.ranch().id()).stream()
                .filter(aside -> aside.id().toString().equals(page.http().pathParam("aside")))
                .findFirst()
                .orElseThrow(NotFoundResponse::new);
    }

    private static Left left(String path, Map<String, List<String>> fields) {
        var name = fields.getOrDefault("name", List.of());
        var kind = path.endsWith("/table")
                ? "A table"
                : switch (path.replaceAll("/.*", "")) {
                    case "lots" -> "A lot";
                    case "feeds" -> "A feed to buy";
                    case "take" ->
                        path.startsWith("take/fields")
                                ? "A field"
                                : path.startsWith("take/groups")
                                        ? "Condition scores"
                                        : path.contains("/weigh") ? "A weighing" : "A field sheet";
                    case "bench" -> path.contains("/hand") ? "A mix by hand" : "Limits on a ration";
                    case "reports" -> "A report";
                    case "herd" -> "A group";
                    case "settings" ->
                        path.startsWith("settings/weather")
                                ? "Winter weather"
                                : path.startsWith("settings/outfit")
                                        ? "Feeding equipment"
                                        : path.startsWith("settings/last-winter") ? "Last winter" : "Ranch settings";
                    case "letter" -> "A letter";
                    case "winter" -> "A week";
                    default -> "A form";
                };
        // the forms of one page stand beside each other on it
        var at = path.replaceFirst(
                "^(settings/weather|reports/lot/[0-9a-f-]+|winter/week|letter/[0-9a-f-]+(?=/call))/\\w+", "$1");
        var typed = name.isEmpty() ? "" : name.get(0).strip();
        var called = typed.length() <= LONGEST ? typed : typed.substring(0, LONGEST) + "…";
        return new Left(
                at,
                (called.isEmpty() ? kind : kind + ": " + called) + (path.contains("?") ? ", of another window" : ""),
                path,
                Drafts.print(fields));
    }

    private static SettingsView settings(Ranch ranch) {
        var settings = ranch.settings();
        var outfit = ranch.outfit();
        var winter = ranch.lastWinter();
        return new SettingsView(
                List.of(
                        new Line("Name", ranch.name()),
                        new Line("Adviser", said(settings.adviser())),
                        new Line("Turnout", settings.turnout() == null ? "not entered" : Show.date(settings.turnout())),
                        new Line(
                                "Lost in feeding",
                                Show.significant(settings.feedingLossPercent(), 4)
                                        + " %"
                                        + (settings.herdFactor() == null
                                                ? ""
                                                : ", counted as " + Show.significant(settings.hayLossPercent(), 3)
                                                        + " % by last winter’s feeding")),
                        new Line(
                                "Hay still to find",
                                settings.findPrice() == null
                                        ? "price not entered"
                                        : Show.quantity(settings.findPrice())),
                        new Line("Needs by", settings.system().words())),
                WeatherPages.lines(settings.weather()),
                List.of(
                        new Line(
                                "Mixer wagon",
                                switch (outfit.mixing()) {
                                    case MIXES -> "yes, " + holds(outfit.mixerHolds());
                                    case NO_MIXER -> "no";
                                    case NOT_SAID -> "not entered: feed that must be mixed stays out";
                                }),
                        new Line("Bales chopped", yes(outfit.processor())),
                        new Line("Wagon weighs", yes(outfit.scale())),
                        new Line("Feed bunk", said(outfit.bunk())),
                        new Line("Fed", outfit.timesADay() == 1 ? "once a day" : outfit.timesADay() + " times a day")),
                lastWinter(winter));
    }

    private static List<Line> lastWinter(haywright.ranch.LastWinter winter) {
        var lines = new ArrayList<Line>();
        lines.add(new Line("Head", winter.head() == null ? "not entered" : Show.number(winter.head(), 0)));
        lines.add(new Line(
                "Days", winter.days() == null ? "not entered" : winter.days().toString()));
        lines.add(new Line("Fed", said(winter.fed())));
        lines.add(new Line(
                "Condition", score(winter.scoreBefore()) + " in fall, " + score(winter.scoreAfter()) + " in spring"));
        return lines;
    }

    private static String score(@Nullable Double score) {
        return score == null ? "not entered" : Show.significant(score, 3);
    }

    private static String holds(@Nullable Quantity quantity) {
        return quantity == null ? "size not entered" : "a load holds " + Show.quantity(quantity);
    }

    private static String said(@Nullable Quantity quantity) {
        return quantity == null ? "not entered" : Show.quantity(quantity);
    }

    private static String said(String text) {
        return text.isBlank() ? "not entered" : text;
    }

    private static String yes(boolean is) {
        return is ? "yes" : "no";
    }

    private static FormView view(Page page, Form form) {
        return new FormView(form, Option.of(RequirementSystem.class, RequirementSystem::words));
    }

    private static void saveRanch(Page page) {
        var form = page.posted("settings/ranch");
        var changed = SettingsForms.read(form, page.ranch(), page.today());
        if (changed.isEmpty()) {
            page.reject(form, RANCH, view(page, form));
            return;
        }
        page.save(form, "Ranch settings changed", ranch -> changed.get(), "settings");
    }

    private static void saveOutfit(Page page) {
        var known = SettingsForms.OUTFIT.known(page.ranch().outfit());
        var form = JsonForm.posted(page, "settings/outfit", SettingsForms.OUTFIT, known);
        var outfit = SettingsForms.OUTFIT.read(form, Map.of(), page.ranch().outfit(), page.today());
        if (outfit.isEmpty() || form.hasProblems()) {
            page.reject(form, OUTFIT, view(page, form));
            return;
        }
        page.save(form, "Feeding equipment", ranch -> ranch.with(outfit.get()), "settings");
    }

    private static void saveLastWinter(Page page) {
        var known = SettingsForms.LAST_WINTER.known(page.ranch().lastWinter());
        var form = JsonForm.posted(page, "settings/last-winter", SettingsForms.LAST_WINTER, known);
        var winter = SettingsForms.LAST_WINTER.read(form, Map.of(), page.ranch().lastWinter(), page.today());
        if (winter.isEmpty() || form.hasProblems()) {
            page.reject(form, WINTER, view(page, form));
            return;
        }
        page.save(form, "Last winter entered", ranch -> ranch.with(winter.get()), "settings");
    }

    private static void export(Page page) {
        var name = page.ranch()
                .name()
                .toLowerCase(Locale.ROOT)
                .replaceAll("[^a-z0-9]+", "-")
                .replaceAll("^-|-$", "");
        page.http()
                .header(
                        "Content-Disposition",
                        "attachment; filename=\"" + (name.isEmpty() ? "ranch" : name) + ".json\"")
                .contentType("application/json; charset=utf-8")
                .result(page.desk().store().files().export(page.ranch().id()));
    }

    private static void archive(Page page) {
        page.desk().store().ranches().delete(page.ranch().id());
        Page.leave(page.http(), "/");
    }

    /** {@code Cold Spring, 2027-28}: the winter that begins next. */
    private static String nextName(Page page) {
        int year = page.desk().today().plusMonths(6).getYear() - 1;
        return "%s, %d-%02d"
                .formatted(page.ranch().name().replaceAll(", 20\\d\\d-\\d\\d$", ""), year, (year + 1) % 100);
    }

    private static void carry(Page page) {
        var form = page.posted("next-winter");
        var name = form.name(NAME, "Enter a name.");
        var next = form.build(() -> NextWinter.of(
                page.ranch(), Sent.newId(page.http()), name, page.desk().today()));
        if (next.isEmpty()) {
            page.reject(form, NEXT, form);
            return;
        }
        page.desk().store().ranches().createOnce(next.get());
        Page.leave(page.http(), "/ranch/" + next.get().id() + "/");
    }
}
