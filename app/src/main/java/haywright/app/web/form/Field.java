package haywright.app.web.form;

import haywright.app.web.Ask;
import haywright.app.web.Form;
import haywright.app.web.Option;
import haywright.app.words.Show;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * One box of a form: what it asks, what kind of answer it takes, and when it has to be filled in.
 *
 * @param ask its name is the record component that it becomes
 * @param needed what to do where it is left empty; empty itself where nothing has to be typed
 * @param options what can be chosen; empty for a box that is entered
 * @param nothing what the empty choice says, where there is one
 * @param usual asked about outside of it; null where nothing is unusual
 */
public record Field(
        Ask ask,
        Kind kind,
        String needed,
        List<Option> options,
        String nothing,
        @Nullable Usual usual) {
    /** What kind of answer a box takes. */
    public enum Kind {
        TEXT,
        COUNT,
        NUMBER,
        AMOUNT,
        /** Without its year it is the latest one that is past. */
        PAST_DATE,
        /** Without its year it is the next one to come. */
        COMING_DATE,
        /** One of a few, all of them shown. */
        CHOICE,
        /** One of many, in a list that opens. */
        PICK,
        TICK
    }

    /** What is usual, both ends included, in the unit that the box asks for in the U.S. */
    public record Usual(double low, double high) {}

    public Field {
        options = List.copyOf(options);
    }

    public String name() {
        return ask.name();
    }

    public boolean isOptional() {
        return needed.isEmpty() && kind != Kind.TICK;
    }

    /** Whether a number is typed, so that a phone shows its digits. */
    public boolean isDigits() {
        return kind == Kind.COUNT || kind == Kind.NUMBER;
    }

    /**
     * What was typed, as the component's type has it: null where nothing was typed and nothing is needed, a stand-in
     * where the form has noted a problem.
     */
    @Nullable
    Object read(Form form, Class<?> type, LocalDate today) {
        return switch (kind) {
            case TEXT -> needed.isEmpty() ? form.text(ask) : form.name(ask, needed);
            case COUNT -> needed.isEmpty() ? form.maybeCount(ask) : (Integer) form.count(ask, needed);
            case NUMBER -> number(form);
            case AMOUNT -> type == Quantity.class ? amount(form) : number(form);
            case PAST_DATE, COMING_DATE -> date(form, today);
            case CHOICE, PICK -> chosen(form, type);
            case TICK -> form.isTicked(ask);
        };
    }

    private @Nullable Double number(Form form) {
        return needed.isEmpty() ? form.maybeNumber(ask) : (Double) form.number(ask, needed);
    }

    private @Nullable Quantity amount(Form form) {
        return needed.isEmpty() ? form.maybeQuantity(ask) : form.quantity(ask, needed);
    }

    private @Nullable LocalDate date(Form form, LocalDate today) {
        if (kind == Kind.PAST_DATE) {
            return needed.isEmpty() ? form.maybePast(ask, today) : form.past(ask, needed, today);
        }
        return needed.isEmpty() ? form.maybeDate(ask, today) : form.date(ask, needed, today);
    }

    private @Nullable Object chosen(Form form, Class<?> type) {
        if (needed.isEmpty() && form.isEmpty(ask)) {
            form.text(ask);
            return type == String.class ? "" : null;
        }
        var value = form.text(ask, needed);
        if (options.stream().noneMatch(option -> option.value().equals(value))) {
            if (!value.isEmpty()) {
                form.refuse(name(), value, "not one of the choices", needed.isEmpty() ? "Choose one." : needed);
            }
            return type.isEnum() ? type.getEnumConstants()[0] : type == String.class ? "" : (Object) false;
        }
        if (type.isEnum()) {
            for (var one : type.getEnumConstants()) {
                if (Form.id((Enum<?>) one).equals(value)) {
                    return one;
                }
            }
        }
        return type == String.class ? value : (Object) value.equals("yes");
    }

    /** How a value stands in the box. */
    public String typed(@Nullable Object value) {
        if (value == null) {
            return "";
        } else if (value instanceof Quantity quantity) {
            return ask.typed(quantity);
        } else if (value instanceof Double number) {
            return Show.significant(number, 12);
        } else if (value instanceof LocalDate date) {
            return Show.date(date);
        } else if (value instanceof Boolean yes) {
            return yes ? "yes" : kind == Kind.TICK ? "" : "no";
        } else if (value instanceof Enum<?> one) {
            return one.name().toLowerCase(Locale.ROOT);
        }
        return value.toString();
    }

    /** Asks about what is outside of the usual, unless it stood there before. */
    void doubt(Form form, @Nullable Object before, @Nullable Object now) {
        if (usual == null || now == null) {
            return;
        }
        form.doubtUnless(
                ask,
                quantity(before),
                quantity(now),
                new Quantity(usual.low, ask.us()),
                new Quantity(usual.high, ask.us()));
    }

    private Quantity quantity(@Nullable Object value) {
        return value instanceof Quantity quantity
                ? quantity
                : new Quantity(value instanceof Number number ? number.doubleValue() : 0, ask.unit());
    }

    // How fields are written down

    /** @param fix what to do where it is left empty */
    public Field needed(String fix) {
        return new Field(ask, kind, fix, options, nothing, usual);
    }

    public Field usually(double low, double high) {
        return new Field(ask, kind, needed, options, nothing, new Usual(low, high));
    }

    public static Field text(String name, String label, String hint) {
        return of(Ask.text(name, label, hint), Kind.TEXT);
    }

    public static Field count(String name, String label, String hint) {
        return of(Ask.number(name, label, hint), Kind.COUNT);
    }

    public static Field number(String name, String label, String hint) {
        return of(Ask.number(name, label, hint), Kind.NUMBER);
    }

    public static Field amount(String name, String label, Unit unit, String hint) {
        return of(Ask.amount(name, label, unit, hint), Kind.AMOUNT);
    }

    public static Field pastDate(String name, String label, String hint) {
        return of(Ask.date(name, label, hint), Kind.PAST_DATE);
    }

    public static Field comingDate(String name, String label, String hint) {
        return of(Ask.date(name, label, hint), Kind.COMING_DATE);
    }

    public static Field tick(String name, String label, String hint) {
        return of(Ask.choice(name, label, hint), Kind.TICK);
    }

    public static Field choice(String name, String label, String hint, List<Option> options) {
        return new Field(Ask.choice(name, label, hint), Kind.CHOICE, "Choose one.", options, "", null);
    }

    /** @param nothing what the empty choice says; it may stay */
    public static Field pick(String name, String label, String hint, List<Option> options, String nothing) {
        return new Field(Ask.choice(name, label, hint), Kind.PICK, "", options, nothing, null);
    }

    private static Field of(Ask ask, Kind kind) {
        return new Field(ask, kind, "", List.of(), "", null);
    }
}
