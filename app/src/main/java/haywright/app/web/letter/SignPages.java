package haywright.app.web.letter;

import haywright.app.report.FeedLetter;
import haywright.app.web.Ask;
import haywright.app.web.Form;
import haywright.app.web.Page;
import haywright.app.web.Routes;
import haywright.cattle.herd.Group;
import haywright.ranch.Contacts;
import haywright.ranch.Pen;
import haywright.ranch.Ranch;
import haywright.ranch.SignedLetter;
import io.javalin.http.NotFoundResponse;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;

/** Whom to call and where the group is, who signs a letter, and the letters that were signed. */
public final class SignPages {
    static final Ask BY = Ask.text("by", "Signed by", "");
    static final Ask MARK = Ask.text("paintMark", "Paint mark", "");
    static final Ask GATE = Ask.text("gate", "Gate or pen", "");
    static final Ask BUNK = Ask.text("bunk", "Bunk", "");
    static final Ask ADVISER = Ask.text("adviser", "Your adviser", "");
    static final Ask ADVISER_PHONE = Ask.text("adviserPhone", "Your adviser’s phone", "");
    static final Ask VET = Ask.text("veterinarian", "Your veterinarian", "");
    static final Ask VET_PHONE = Ask.text("veterinarianPhone", "Your veterinarian’s phone", "");

    private SignPages() {}

    static void routes(Routes on) {
        on.get("letter/{group}/who", SignPages::who);
        on.post("letter/{group}/who", SignPages::saveWho);
        on.postBeside("letter/{group}/call", SignPages::saveCall);
        on.get("letter/{group}/sign", SignPages::sign);
        on.post("letter/{group}/sign", SignPages::saveSigned);
        on.get("letter/{group}/signed/{letter}", SignPages::signed);
    }

    /** @param reports and {@code overrides} are what is kept with it */
    public record View(Group group, Form form, List<Ask> asks, List<String> reports, List<String> overrides) {}

    /** @param kept the letter word for word */
    public record Kept(SignedLetter signed, FeedLetter kept) {}

    private static Group group(Page page) {
        return page.find(page.ranch().groups(), "group");
    }

    /** Of one group, the newest first. */
    static List<SignedLetter> of(Ranch ranch, Group group) {
        return ranch.signed().values().stream()
                .filter(signed -> signed.letter().group().equals(group.id()))
                .sorted(Comparator.comparing(SignedLetter::on).reversed())
                .toList();
    }

    private static String whoKey(Group group) {
        return "letter/" + group.id() + "/who";
    }

    private static void who(Page page) {
        var group = group(page);
        var form = page.form(whoKey(group), () -> known(page.ranch(), group));
        page.show("haywright/app/web/letter/who.jte", whoView(group, form));
    }

    private static View whoView(Group group, Form form) {
        return new View(group, form, List.of(MARK, GATE, BUNK, ADVISER_PHONE, VET, VET_PHONE), List.of(), List.of());
    }

    private static Map<String, String> known(Ranch ranch, Group group) {
        var said = ranch.contacts();
        var contacts = said == null ? Contacts.NOT_SAID : said;
        var pen = ranch.pen(group.id());
        var known = new LinkedHashMap<String, String>();
        known.put(MARK.name(), pen.paintMark());
        known.put(GATE.name(), pen.gate());
        known.put(BUNK.name(), pen.bunk());
        known.put(ADVISER_PHONE.name(), contacts.adviserPhone());
        known.put(VET.name(), contacts.veterinarian());
        known.put(VET_PHONE.name(), contacts.veterinarianPhone());
        return known;
    }

    private static void saveWho(Page page) {
        var group = group(page);
        var form = page.posted(whoKey(group));
        var pen = new Pen(group.id(), form.text(GATE), form.text(MARK), form.text(BUNK));
        var contacts = new Contacts(form.text(ADVISER_PHONE), form.text(VET), form.text(VET_PHONE));
        page.save(
                form,
                "Whom to call and where they are changed: " + group.name(),
                ranch -> ranch.with(pen).with(contacts),
                "letter/" + group.id());
    }

    /** Asked once, where the first letter is made. */
    public static List<Ask> call() {
        return List.of(ADVISER, ADVISER_PHONE, VET, VET_PHONE);
    }

    /** The form that asks it, on the page of the letter. */
    public static Form callForm(Page page, Group group) {
        return page.form(
                callKey(group),
                () -> Map.of(ADVISER.name(), page.ranch().settings().adviser()));
    }

    private static String callKey(Group group) {
        return "letter/" + group.id() + "/call";
    }

    private static void saveCall(Page page) {
        var group = group(page);
        var form = page.posted(callKey(group));
        var contacts = new Contacts(form.text(ADVISER_PHONE), form.text(VET), form.text(VET_PHONE));
        var adviser = form.text(ADVISER);
        page.save(
                form,
                "Whom to call entered",
                ranch -> ranch.with(contacts)
                        .with(
                                adviser.isEmpty()
                                        ? ranch.settings()
                                        : ranch.settings().withAdviser(adviser)),
                "letter/" + group.id());
    }

    private static String signKey(Group group) {
        return "letter/" + group.id() + "/sign";
    }

    private static void sign(Page page) {
        var group = group(page);
        var form = page.form(
                signKey(group), () -> Map.of(BY.name(), page.ranch().settings().adviser()));
        page.show("haywright/app/web/letter/sign.jte", signView(page, group, form));
    }

    private static View signView(Page page, Group group, Form form) {
        var letter = FeedLetter.of(page.offers(group));
        return new View(group, form, List.of(BY), letter.reports(page.offers(group)), letter.overrides());
    }

    private static void saveSigned(Page page) {
        var group = group(page);
        var form = page.posted(signKey(group));
        if (form.isEmpty(BY)) {
            form.refuse(BY.name(), "nothing", "a signed letter has a name under it", "Enter who signs it.");
        }
        var letter = FeedLetter.of(page.offers(group));
        var signed = form.build(() -> new SignedLetter(
                UUID.randomUUID(),
                letter.letter(),
                form.text(BY),
                page.today(),
                letter.reports(page.offers(group)),
                letter.overrides()));
        if (signed.isEmpty()) {
            page.reject(form, "haywright/app/web/letter/sign.jte", signView(page, group, form));
            return;
        }
        page.save(
                form,
                "Letter signed: " + group.name(),
                ranch -> ranch.with(letter.letter()).with(signed.get()),
                "letter/" + group.id());
    }

    private static void signed(Page page) {
        var group = group(page);
        var signed = page.find(page.ranch().signed(), "letter");
        if (!signed.letter().group().equals(group.id())) {
            throw new NotFoundResponse();
        }
        page.show(
                "haywright/app/web/letter/signed.jte",
                new Kept(signed, new FeedLetter(page.ranch(), group, signed.letter())));
    }
}
