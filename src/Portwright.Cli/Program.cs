System.Console.WriteLine("portwright");
