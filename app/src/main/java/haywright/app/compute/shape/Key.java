package haywright.app.compute.shape;

import haywright.quantity.Unit;
import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/**
 * How a record component is named in JSON: quantity, then unit, then basis. {@code @Key(Unit.PERCENT, of = "dm") double
 * adf} is written {@code adf_pct_dm} and holds percent; it is read from that key or from {@code adf_g_per_kg_dm} or any
 * other unit of the same kind, and converted. Without the annotation a component is its own name in snake case.
 */
@Retention(RetentionPolicy.RUNTIME)
@Target(ElementType.RECORD_COMPONENT)
public @interface Key {
    /** The unit that the component holds and that an answer is written in. */
    Unit value() default Unit.NONE;

    /** What a share is a share of: {@code dm}, {@code bw}, {@code ndf}. */
    String of() default "";

    /** The quantity's name where the component's own cannot be it: {@code class}. */
    String name() default "";

    /** Whether the keys of a record component stand among the others instead of in an object of their own. */
    boolean inline() default false;

    /** One line for the schema, where the name does not say it all. */
    String words() default "";
}
