import java.lang.reflect.Field;
import java.lang.reflect.Modifier;

/** Prints every text constant of the named classes as hexadecimal code points. */
public final class Names {
  public static void main(String[] classes) throws Exception {
    for (String name : classes) {
      Class<?> outer = Class.forName(name);
      show(outer);
      for (Class<?> kind : outer.getDeclaredClasses()) {
        show(kind);
      }
      for (Object row : (java.util.List<?>) outer.getField("DEVICES").get(null)) {
        StringBuilder line = new StringBuilder(name).append(" row");
        for (String field : new String[] {"name", "kind", "port"}) {
          line.append(' ').append(hex((String) row.getClass().getField(field).get(row)));
        }
        for (String field : new String[] {"reversed", "optional"}) {
          line.append(' ').append(row.getClass().getField(field).get(row));
        }
        System.out.println(line);
      }
    }
  }

  private static void show(Class<?> type) throws Exception {
    for (Field field : type.getFields()) {
      if (field.getType() == double.class) {
        String value = Double.toHexString(field.getDouble(null));
        System.out.println(type.getName() + "." + field.getName() + " " + value);
      }
      if (field.getType() == String.class && Modifier.isStatic(field.getModifiers())) {
        String place = type.getName() + "." + field.getName();
        System.out.println(place + " " + hex((String) field.get(null)));
      }
    }
  }

  private static String hex(String text) {
    StringBuilder codes = new StringBuilder("=");
    text.codePoints().forEach(code -> codes.append(Integer.toHexString(code)).append(','));
    return codes.toString();
  }
}
