package haywright.app.web.herd;

import haywright.app.web.Ask;
import haywright.app.web.Form;
import haywright.app.web.Option;
import haywright.app.web.Page;
import haywright.app.web.Routes;
import haywright.app.words.Show;
import haywright.cattle.herd.Group;
import haywright.cattle.herd.Regrouping;
import haywright.ranch.FedNow;
import haywright.ranch.Ranch;
import haywright.ranch.Wishes;
import java.util.List;
import java.util.Map;
import java.util.UUID;

/** One group made two, or two made one. */
public final class RegroupPages {
    public static final Ask HEAD = Ask.number("head", "Head to split off", "");
    public static final Ask NAME = Ask.text("name", "Name of the new group", "Such as “thin cows”.");
    public static final Ask WHO =
            Ask.choice("who", "Which ones", "Divides the calving weeks; change them later if needed.");
    public static final Ask OTHER = Ask.choice("other", "Group to join", "Only groups of one class can be joined.");

    private static final String SPLIT = "haywright/app/web/herd/split.jte";
    private static final String JOIN = "haywright/app/web/herd/join.jte";

    private RegroupPages() {}

    static void routes(Routes on) {
        on.get(
                "herd/{group}/split",
                page -> page.show(SPLIT, view(page, page.form(split(page), () -> Map.of("who", "alike")))));
        on.post("herd/{group}/split", RegroupPages::saveSplit);
        on.get("herd/{group}/join", page -> page.show(JOIN, view(page, page.form(join(page), Map::of))));
        on.post("herd/{group}/join", RegroupPages::saveJoin);
    }

    /** @param others that could come into the group */
    public record View(Group group, Form form, List<Option> others) {
        public List<Option> who() {
            return Option.of(Regrouping.Who.class, who -> switch (who) {
                case ALIKE -> "some of each: all weeks alike";
                case EARLY -> "those that calve first";
                case LATE -> "those that calve last";
            });
        }
    }

    private static String split(Page page) {
        return "herd/" + page.id("group") + "/split";
    }

    private static String join(Page page) {
        return "herd/" + page.id("group") + "/join";
    }

    private static View view(Page page, Form form) {
        var group = GroupPages.group(page);
        return new View(
                group,
                form,
                page.ranch().groups().values().stream()
                        .filter(other -> !other.id().equals(group.id()) && other.animals() == group.animals())
                        .map(other -> new Option(
                                other.id().toString(), other.name() + ", " + Show.number(other.head(), 0) + " head"))
                        .toList());
    }

    private static void saveSplit(Page page) {
        var group = GroupPages.group(page);
        var form = page.posted(split(page));
        int head = form.count(HEAD, "Enter how many.");
        var name = form.name(NAME, "Enter a name.");
        var id = UUID.randomUUID();
        GroupPages.doubtIfTaken(page, form, id, "");
        var who = group.calving().isEmpty()
                ? Regrouping.Who.ALIKE
                : form.choice(WHO, Regrouping.Who.class, "Some of each is usual.");
        var made = form.build(() -> Regrouping.split(group, id, name, head, who, page.today()));
        if (made.isEmpty()) {
            page.reject(form, SPLIT, view(page, form));
            return;
        }
        page.save(
                form,
                "%s split off from %s: %s".formatted(Show.number(head, 0) + " head", group.name(), name),
                ranch -> split(ranch, made.get()),
                "herd");
    }

    /** What both are fed now, and what is wished for them, is what it was. */
    private static Ranch split(Ranch ranch, Regrouping.Split made) {
        var from = made.stays().id();
        var to = made.goes().id();
        var with = ranch.with(made.stays()).with(made.goes());
        var fed = ranch.fedNow().get(from);
        with = fed == null ? with : with.with(new FedNow(to, fed.amounts()));
        var wishes = ranch.wishes().get(from);
        return wishes == null
                ? with
                : with.with(new Wishes(to, wishes.feeds(), wishes.limitsOff(), wishes.way(), wishes.surenessPercent()));
    }

    private static void saveJoin(Page page) {
        var group = GroupPages.group(page);
        var form = page.posted(join(page));
        var other = page.ranch().groups().values().stream()
                .filter(one -> one.id().toString().equals(form.text(OTHER))
                        && !one.id().equals(group.id()))
                .findFirst();
        if (other.isEmpty()) {
            form.refuse(OTHER.name(), "", "no group was chosen", "Choose the group to join.");
        }
        var made = other.flatMap(one -> form.build(() -> Regrouping.join(group, one, page.today())));
        if (made.isEmpty() || other.isEmpty()) {
            page.reject(form, JOIN, view(page, form));
            return;
        }
        page.save(
                form,
                "%s joined %s".formatted(other.get().name(), group.name()),
                ranch -> ranch.withoutGroup(other.get().id()).with(made.get()),
                "herd/" + group.id());
    }
}
