"""Programs as students write them, each a body of a namespace: all of their names must be told."""

from __future__ import annotations

STUDENTS = {
    "a configuration by constant reference": """
        struct Config { std::string bow = "bow"; std::string stern = "stern"; int ticks = 0; };
        void fit(const Config& config) { motor(config.bow); motor(config.stern); }
        void run() { Config config; config.ticks = 3; fit(config); }""",
    "a configuration by pointer": """
        struct Config { std::string bow = "bow"; };
        void fit(const Config* config) { motor(config->bow); }
        void run() { Config config; fit(&config); }""",
    "a configuration that is made new": """
        struct Config { std::string bow = "bow"; int ticks = 0; };
        void run() { Config* config = new Config; config->ticks = 3; motor(config->bow);
          auto other = new Config(); motor(other->bow); auto third = std::make_unique<Config>();
          motor(third->bow); delete config; delete other; }""",
    "another name of a configuration": """
        struct Config { std::string bow = "bow"; int ticks = 0; };
        Config config;
        void run() { Config& c = config; c.ticks = 3; motor(c.bow);
          const auto& d = config; motor(d.bow); auto* e = &config; motor(e->bow); }""",
    "a copy of a configuration": """
        struct Config { std::string bow = "bow"; };
        Config config;
        void run() { auto c = config; motor(c.bow); Config d = config; motor(d.bow);
          Config e(config); motor(e.bow); Config f{config}; motor(f.bow); }""",
    "a configuration as a member": """
        struct Config { std::string bow = "bow"; };
        class Boat { public: explicit Boat(const Config& config) : config_(config) {}
          void start() { motor(config_.bow); } private: Config config_; };
        void run() { Config config; Boat boat(config); boat.start(); }""",
    "a configuration as a member that refers": """
        struct Config { std::string bow = "bow"; };
        class Boat { public: explicit Boat(const Config& config) : config(config) {}
          void start() { motor(config.bow); } const Config& config; };
        void run() { Config config; Boat(config).start(); }""",
    "a configuration that a function gives": """
        struct Config { std::string bow = "bow"; int ticks = 0; };
        Config load() { Config config; config.ticks = 5; return config; }
        void run() { Config config = load(); motor(config.bow); auto other = load();
          motor(other.bow); motor(load().bow); }""",
    "a configuration that there is one of": """
        class Config { public: static Config& get() { static Config one; return one; }
          std::string bow = "bow"; };
        void run() { Config& config = Config::get(); motor(config.bow);
          motor(Config::get().bow); }""",
    "configurations in a configuration": """
        struct Drive { std::string left = "port"; std::string right = "starboard"; };
        struct Config { Drive drive; int ticks = 3; };
        void fit(const Config& config) { motor(config.drive.left); motor(config.drive.right); }
        void run() { Config config; motor(config.drive.left); fit(config); }""",
    "a class with its names in its constructor": """
        class Boat { std::string bow_; std::string stern_; public:
          Boat() : bow_("bow"), stern_("stern") {} void start() { motor(bow_); motor(stern_); } };
        void run() { Boat boat; boat.start(); }""",
    "a class with names by constants": """
        static const char* const kBow = "bow"; constexpr const char* kStern = "stern";
        class Boat { const char* bow = kBow; const char* stern{kStern}; public:
          void start() { motor(bow); motor(stern); } };
        void run() { Boat boat; boat.start(); }""",
    "a class that makes its motors": """
        struct Motor { std::string name; explicit Motor(const std::string& n) : name(n) {} };
        class Boat { std::string prefix = "main"; Motor bow{"b"}; public:
          void start() { motor(prefix + "Bow"); } };
        void run() { Boat().start(); }""",
    "an array by numbers": """
        const char* const kNames[] = {"bow", "stern", "rudder"};
        void run() { motor(kNames[0]); motor(kNames[1]); motor(kNames[2]); }""",
    "an array by a counter": """
        const char* kNames[3] = {"bow", "stern", "rudder"};
        void run() { for (int i = 0; i < 3; i++) { motor(kNames[i]); } }""",
    "a list by a counter": """
        void run() { const std::vector<std::string> names = {"bow", "stern"};
          for (size_t i = 0; i < names.size(); ++i) motor(names[i]);
          for (size_t i = 0; i < names.size(); ++i) motor(names.at(i)); }""",
    "a list with iterators": """
        void run() { std::vector<std::string> names{"bow", "stern"};
          for (auto it = names.begin(); it != names.end(); ++it) motor(*it);
          for (auto it = names.cbegin(); it != names.cend(); ++it) motor(it->c_str()); }""",
    "a list that algorithms read": """
        void run() { std::vector<std::string> names{"bow", "stern"};
          std::for_each(names.begin(), names.end(), [](const std::string& n) { motor("x" + n); });
          std::vector<std::string> copy(2); std::copy(names.begin(), names.end(), copy.begin());
          if (std::find(names.begin(), names.end(), "bow") == names.end()) return;
          if (std::count(names.begin(), names.end(), "bow") != 1) return;
          std::for_each(names.begin(), names.end(), [](std::string n) { n += "x"; });
          names.reserve(9);
          for (const auto& name : names) motor(name); }""",
    "a text that libraries read": """
        void run() { std::string name = "bow"; name.reserve(20); name.shrink_to_fit();
          if (!std::regex_match(name, std::regex("[a-z]+"))) return;
          if (std::regex_search(name, std::regex("z"))) return;
          std::filesystem::path path(name); std::hash<std::string>{}(name);
          std::cerr << path << std::setw(9) << std::quoted(name) << std::endl;
          motor(name); }""",
    "two lists that one gets of the other": """
        void run() { std::vector<std::string> one{"bow"}; std::vector<std::string> all;
          all.insert(all.end(), one.begin(), one.end());
          std::copy(one.begin(), one.end(), std::back_inserter(all));
          std::transform(one.begin(), one.end(), all.begin(), [](const auto& s) { return s + "x";
          });
          std::vector<std::string> more(one.begin(), one.end());
          for (auto& n : one) motor(n); }""",
    "a table that is gone through": """
        const std::map<std::string, int> kPorts = {{"bow", 1}, {"stern", 2}};
        void run() { std::map<int, std::string> byPort;
          for (const auto& [name, port] : kPorts) byPort[port] = name;
          const std::string bow = "bow"; if (kPorts.count(bow) && kPorts.at(bow) == 1) motor(bow);
          }""",
    "devices in a table": """
        struct Part { std::string name; int port; };
        void run() { std::map<std::string, int> ports; const std::string bow = "bow";
          ports[bow] = 1; ports.insert({bow, 2}); ports.emplace(bow, 3); motor(bow);
          std::string stern = "stern"; ports[stern] = 2; ports.insert({stern, 2}); motor(stern);
          }""",
    "a function that only reads": """
        void log(const std::string& what) { std::cerr << what << "\\n"; }
        void print(std::string_view what) { std::cerr << what; }
        bool isBow(std::string what) { return what == "bow"; }
        size_t length(const char* what) { return std::strlen(what); }
        void run() { std::string name = "bow"; log(name); print(name); isBow(name);
          length(name.c_str()); motor(name); }""",
    "a getter": """
        class Names { std::string bow = "bow"; public: std::string getBow() const { return bow; }
          const std::string& stern() const { return stern_; } std::string stern_ = "stern"; };
        void run() { Names names; motor(names.getBow()); motor(names.stern()); }""",
    "a getter by reference": """
        class Names { std::string bow = "bow"; public:
          const std::string& getBow() const { return bow; } };
        void start(const Names& names) { motor(names.getBow()); }
        void run() { Names names; start(names); Names* p = &names; motor(p->getBow()); }""",
    "a setter of another class": """
        struct Task { std::string name; void setName(const std::string& n) { name = n; } };
        struct Boat { std::string name = "bow"; void start() { motor(name); } };
        void run() { Task task; task.setName("x"); task.name = "y"; Boat boat; boat.start(); }""",
    "a member of another object with the name": """
        struct Person { std::string name; int age = 0; };
        struct Boat { std::string name = "bow"; void start(Person& who) {
          who.name = "Kim"; motor(name); } };
        void run() { Person kim; kim.name = "Kim"; Person* p = &kim; p->name = "Bo";
          std::vector<Person> all(2); Boat boat; boat.start(kim); }""",
    "a copy with another name": """
        struct Boat { Boat(const Boat& other) { side = other.side; } Boat() = default;
          int side = 0; std::string name = "bow"; void start() { motor(name); } };
        void run() { Boat one; Boat two(one); two.start(); }""",
    "names in a namespace": """
        namespace names { constexpr char BOW[] = "bow"; const std::string STERN{"stern"};
          inline constexpr std::string_view RUDDER = "rudder"; }
        void run() { motor(names::BOW); motor(names::STERN);
          motor(std::string(names::RUDDER)); }""",
    "names in a class": """
        class Names { public: static constexpr const char* BOW = "bow";
          static const std::string STERN; Names() = delete; };
        const std::string Names::STERN = "stern";
        void run() { motor(Names::BOW); motor(Names::STERN); }""",
    "a helper that makes a name": """
        std::string side(bool left) { return left ? "port" : "starboard"; }
        std::string bow() { return "bow"; }
        std::string full() { return bow() + "Thruster"; }
        void run() { motor(bow()); motor(full()); }""",
    "a helper with the name in a local variable": """
        std::string bow() { const std::string prefix = "bow"; return prefix + "Thruster"; }
        const char* stern() { static const char name[] = "stern"; return name; }
        void run() { motor(bow()); motor(stern()); }""",
    "a choice": """
        const bool kLeft = true;
        void run() { const std::string name = kLeft ? "port" : "starboard"; motor(name);
          std::string other = "bow"; if (flag()) motor(other); else motor("stern"); }""",
    "pairs": """
        void run() { std::string name = "bow"; auto pair = std::make_pair(name, 3);
          std::pair<std::string, int> other{name, 4}; std::tuple<std::string, int> t(name, 1);
          std::vector<std::pair<std::string, int>> all{{name, 3}}; all.push_back({name, 4});
          all.emplace_back(name, 5); motor(name); }""",
    "parts in a list": """
        struct Part { std::string name; int port; };
        void run() { const std::string bow = "bow"; std::vector<Part> parts{{bow, 1}, {"x", 2}};
          parts.push_back(Part{bow, 3}); parts.push_back({bow, 4}); motor(bow); }""",
    "streams": """
        void run() { std::string name = "bow"; std::ostringstream out; out << "motor " << name;
          std::istringstream in(name); std::string other; in >> other;
          std::string line; std::getline(in, line); std::ofstream file(name); motor(name); }""",
    "lambdas": """
        void run() { std::string name = "bow"; auto show = [&name] { std::cerr << name; };
          auto start = [&]() { motor(name); }; auto copy = [name]() mutable { motor(name); };
          auto tell = [](const std::string& n) { std::cerr << n; }; show(); start(); copy();
          tell(name); std::function<void()> f = [name] { motor(name); }; f(); }""",
    "a base class": """
        class Boat { public: virtual ~Boat() = default; virtual void start() = 0;
          protected: const std::string bow = "bow"; std::string stern = "stern"; };
        class Heron : public Boat { public: void start() override { motor(bow); motor(stern); } };
        void run() { Heron().start(); std::unique_ptr<Boat> boat = std::make_unique<Heron>();
          boat->start(); }""",
    "a class with a constructor for other members": """
        class Arm { public: Arm(int port, bool reversed) : port_(port), reversed_(reversed) {}
          void start() { motor(name_); } private: int port_; bool reversed_;
          std::string name_ = "arm"; };
        void run() { Arm arm(3, true); arm.start(); Arm* other = new Arm(4, false);
          other->start(); delete other; std::vector<Arm> all{{1, true}, {2, false}};
          for (auto& one : all) one.start(); }""",
    "a template": """
        template <class T> T twice(T value) { return value + value; }
        template <class T> struct Holder { T value; std::string name = "bow";
          void start() { motor(name); } };
        void run() { twice(3); Holder<int> holder; holder.value = 3; holder.start(); }""",
    "switches": """
        enum class Side { Left, Right };
        void start(Side side) { switch (side) { case Side::Left: motor("port"); break;
          case Side::Right: { const char* name = "starboard"; motor(name); break; } } }
        void run() { start(Side::Left); start(Side::Right); }""",
    "text functions": """
        void run() { const std::string side = "bow"; std::string name = side + "Thruster";
          if (name.find("bow") != std::string::npos && name.substr(0, 3) == side) motor(name);
          auto upper = name; std::transform(upper.begin(), upper.end(), upper.begin(), ::toupper);
          std::string copy = name; copy[0] = 'B'; motor(name); }""",
    "exceptions": """
        void run() { std::string name = "bow"; try { if (name.empty()) {
          throw std::runtime_error("no " + name); } motor(name); }
          catch (const std::exception& e) { std::cerr << name << e.what(); } }""",
    "assertions": """
        void run() { const std::string name = "bow"; assert(name.size() > 1);
          std::string other = "stern"; assert(!other.empty()); static_assert(sizeof(int) > 1);
          motor(name); motor(other); }""",
    "a list of pointers": """
        const char* bow = "bow"; const char* stern = "stern";
        void run() { const char* all[] = {bow, stern}; for (const char* one : all) motor(one);
          std::array<const char*, 2> both{bow, stern}; for (auto one : both) motor(one); }""",
    "another name of a text": """
        void run() { std::string name = "bow"; const std::string& same = name;
          std::string_view view = name; const char* letters = name.c_str(); auto* p = &same;
          motor(same); motor(std::string(view)); motor(letters); motor(name); }""",
    "an optional": """
        void run() { std::optional<std::string> found; std::string name = "bow";
          found = name; std::optional<std::string> other(name); std::optional<std::string> x{name};
          motor(name); }""",
    "a thread": """
        void run() { std::string name = "bow"; std::thread worker([name] { motor(name); });
          worker.join(); motor(name); }""",
    "comparing": """
        void run() { std::string name = "bow"; if (std::strcmp(name.c_str(), "bow") == 0 &&
          name.compare("bow") == 0 && name == std::string("bow") && name != "x" && "a" < name) {
          motor(name); } }""",
    "a swap of others": """
        void run() { std::string name = "bow", a = "a", b = "b"; std::swap(a, b);
          std::sort(a.begin(), a.end()); std::min(name, a); std::max(a, name); motor(name); }""",
    "members that are set in the body": """
        class Boat { std::string bow; const char* stern; public:
          Boat() { bow = "bow"; stern = "stern"; } void start() { motor(bow); motor(stern); } };
        void run() { Boat boat; boat.start(); }""",
    "a constructor that calls another": """
        class Boat { std::string bow = "bow"; int side; public: Boat(int s) : side(s) {}
          Boat() : Boat(3) {} void start() { motor(bow); } };
        void run() { Boat boat; boat.start(); }""",
    "an array of objects": """
        struct Lamp { std::string name = "lamp"; int port = 0; void on() { motor(name); } };
        Lamp lamps[2];
        void run() { lamps[0].port = 3; lamps[1].on(); for (auto& lamp : lamps) lamp.on();
          motor(lamps[0].name); for (const Lamp& lamp : lamps) motor(lamp.name); }""",
    "a typed loop": """
        const std::array<std::string, 2> kNames = {"bow", "stern"};
        void run() { for (std::size_t i = 0; i < kNames.size(); i++) motor(kNames[i]);
          for (const std::string& name : kNames) { std::string copy = name; motor(copy); } }""",
    "sizes": """
        const char* kNames[] = {"bow", "stern"};
        const int kCount = sizeof(kNames) / sizeof(kNames[0]);
        void run() { for (int i = 0; i < kCount; ++i) motor(kNames[i]); }""",
}
