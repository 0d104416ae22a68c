// local build only
